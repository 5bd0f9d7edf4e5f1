import { pathsText, type RideAnswer, type RideStatus, tyreFootText, type UnitSystem } from '@lastinch/core';
import { LANES, type Lane } from '../../answers.ts';
import panel from '../../design/panel.module.css';
import { LANE_NAME } from '../../parts/place-name.ts';

const STATUS: Readonly<Record<RideStatus, string | null>> = {
  finished: null,
  'step-limit': 'stopped before the end, because it needed too many steps',
  'left-validity': 'stopped where the model is no longer valid, for example on its side',
  cancelled: 'was cancelled',
};

/** How far the figures of a ride can be trusted. */
export function RideNote({
  answers,
  system,
}: {
  readonly answers: Readonly<Record<Lane, RideAnswer | null>>;
  readonly system: UnitSystem;
}) {
  return (
    <section className={panel.note} aria-label="How far to trust this">
      {LANES.map((lane) => {
        const answer = answers[lane];
        if (answer === null) return null;
        const { energy, counters, status, time } = answer.run;
        return (
          <p key={lane}>
            <strong>{LANE_NAME[lane]}:</strong> {time.toFixed(1)} s ridden
            {STATUS[status] === null ? '' : `, ${STATUS[status]}`}. Energy put in, stored and turned to heat
            agree to {energy.relativeResidual.toExponential(0)} of what was turned over; {counters.steps}{' '}
            steps, {counters.events} touches and lift-offs located in time. The{' '}
            {tyreFootText(answer.tyres, { system })}. Ratios: {pathsText(answer.paths)}.
          </p>
        );
      })}
      <p>
        ± comes from the tolerances of your readings only. The model has a rigid frame and seven motions; it
        does not know steering, braking or a driver who lifts. Clear a road on foot before you drive it at
        this speed.
      </p>
    </section>
  );
}
