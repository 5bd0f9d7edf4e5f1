import { CORNERS, type RideAnswer, type Rig, type UnitSystem } from '@lastinch/core';
import { exposureJson } from './exposure-json.ts';
import { assumptionsJson, findingJson } from './figure-json.ts';

/** The answer of `ride --json`: `lastinch/ride/1`. Plain SI numbers, with their 95 % half-widths beside them. */
export function rideJson(rig: Rig, answer: RideAnswer, against: RideAnswer | null, system: UnitSystem) {
  return {
    schema: 'lastinch/ride/1',
    units: 'SI',
    rig: answer.rig,
    ...runJson(answer, system),
    assumptions: assumptionsJson(rig),
    ...(against === null ? {} : { against: runJson(against, system) }),
  };
}

/** Several courses in one call: `lastinch/rides/1`, each ride as in `lastinch/ride/1`, in the order asked for. */
export function ridesJson(
  rig: Rig,
  rides: readonly { readonly answer: RideAnswer; readonly against: RideAnswer | null }[],
  system: UnitSystem,
) {
  return {
    schema: 'lastinch/rides/1',
    units: 'SI',
    rig: rig.name,
    rides: rides.map(({ answer, against }) => ({
      ...runJson(answer, system),
      ...(against === null ? {} : { against: runJson(against, system) }),
    })),
    assumptions: assumptionsJson(rig),
  };
}

const runJson = (answer: RideAnswer, system: UnitSystem) => ({
  setup: answer.setup,
  course: answer.course,
  tyres: answer.tyres,
  speed: answer.speed,
  status: answer.run.status,
  time: answer.run.time,
  duration: answer.run.duration,
  corners: Object.fromEntries(
    CORNERS.map((at) => {
      const { run, corners } = answer;
      const of = run.corners[at];
      return [
        at,
        {
          peakCrush: of.peakCrush,
          clearance: of.clearance,
          peakStopForce: of.peakStopForce,
          airborneShare: of.airborneShare,
          peakTravel: of.peakTravel,
          peakShockSpeed: of.peakShockSpeed,
          contacts: of.contacts,
          tolerance: {
            peakCrush: corners[at].peakCrush.tolerance,
            clearance: corners[at].clearance.tolerance,
            peakStopForce: corners[at].peakStopForce.tolerance,
            airborneShare: corners[at].airborneShare.tolerance,
          },
        },
      ];
    }),
  ),
  body: {
    ...answer.run.body,
    tolerance: {
      peakAcceleration: answer.body.peakAcceleration.tolerance,
      rmsAcceleration: answer.body.rmsAcceleration.tolerance,
    },
  },
  exposure: exposureJson(answer.exposure),
  counters: answer.run.counters,
  energy: answer.run.energy,
  findings: answer.findings.map((finding) => findingJson(finding, system)),
});
