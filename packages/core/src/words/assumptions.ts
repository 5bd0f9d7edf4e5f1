import type { Assumption, AssumptionRule } from '../rig/assumptions.ts';
import { readingName } from './readings.ts';

/** An assumption in words: what was taken instead of a reading, and how to take the reading. */
export interface AssumptionText {
  readonly what: string;
  readonly howToMeasure: string;
}

/**
 * @returns Two sentences that are the same for every reading filled by the same rule, so that a view can group them;
 * the name of the reading is `readingName(assumption.key)`.
 */
export const assumptionText = (assumption: Assumption): AssumptionText => PHRASES[assumption.rule];

/** What was taken for several readings in the same words, and their names. */
export interface AssumptionGroup extends AssumptionText {
  readonly names: readonly string[];
}

/** Assumptions that are said in the same words, together; in the order in which each was first made. */
export function groupedAssumptions(assumptions: readonly Assumption[]): readonly AssumptionGroup[] {
  const groups = new Map<string, AssumptionText & { readonly names: string[] }>();
  for (const assumption of assumptions) {
    const said = assumptionText(assumption);
    const id = `${said.what}\n${said.howToMeasure}`;
    const group = groups.get(id) ?? { ...said, names: [] };
    group.names.push(readingName(assumption.key));
    groups.set(id, group);
  }
  return [...groups.values()];
}

const SAY_IT = 'Repeat the reading three times and type half the spread as its tolerance.';

const PHRASES: Readonly<Record<AssumptionRule, AssumptionText>> = {
  'tape-tolerance': {
    what: 'No tolerance was typed: that of a tape was taken, 1/16 in or 1.5 mm.',
    howToMeasure: SAY_IT,
  },
  'scale-tolerance': {
    what: 'No tolerance was typed: that of corner pads was taken, 0.5 %.',
    howToMeasure: 'Roll off and on again three times and type half the spread as the tolerance.',
  },
  'press-rate-tolerance': {
    what: 'No tolerance was typed: that of a spring press was taken, 5 %.',
    howToMeasure:
      'Read the load at five lengths around the working one, up and down; the slopes differ by the tolerance.',
  },
  'press-crush-tolerance': {
    what: 'No tolerance was typed: that of a press test was taken, 5 %.',
    howToMeasure:
      'Press three times after three strokes to bed it in; type half the spread. Guard, face shield, no face in line.',
  },
  'drill-tolerance': {
    what: 'No tolerance was typed: that of a hole sized with drill shanks was taken, 0.25 mm.',
    howToMeasure: 'Try shanks until one goes and the next does not; type half the step between them.',
  },
  'ratio-tolerance': {
    what: 'No tolerance was typed: two tapes over a few inches of travel give a ratio to 0.02.',
    howToMeasure: 'Move the axle by a longer distance and measure both ends of it.',
  },
  'under-rig-tolerance': {
    what: 'No tolerance was typed: that of tape and plumb line under a rig was taken, 1/8 in or 3 mm.',
    howToMeasure:
      'Drop a plumb line from the joint, mark the floor, measure between marks twice; type half the spread.',
  },
  'gauge-plate-tolerance': {
    what: 'No tolerance was typed: that of rolled steel and a calliper was taken, 4 % or 0.2 mm.',
    howToMeasure: 'Measure bright metal at three places and type half the spread.',
  },
  'bracket-yield': {
    what: 'The steel was not named: mild steel was taken, 250 MPa ± 30 at yield.',
    howToMeasure: 'Read it off the paper that came with the steel, or have a piece pulled.',
  },
  'bracket-ultimate': {
    what: 'The steel was not named: mild steel was taken, 400 MPa ± 40 at break.',
    howToMeasure: 'Read it off the paper that came with the steel, or have a piece pulled.',
  },
  'bracket-offset': {
    what: 'Nobody said how far beside its middle the bracket is loaded: 5 mm ± 5 were taken.',
    howToMeasure:
      'Chalk the pad, close the stop slowly, and measure the print from the middle of the bracket.',
  },
  'bracket-factor': {
    what: 'No factor of safety was typed for brackets: 2 against yield was taken.',
    howToMeasure: 'It is your choice: limits.bracketFactor.',
  },
  'level-tolerance': {
    what: 'No tolerance was typed: that of a digital level was taken, 0.2°.',
    howToMeasure: 'Read it three times, turning the level end for end; type half the spread.',
  },
  'case-level': {
    what: 'The output of the case was taken as level, to 3°.',
    howToMeasure:
      'Put a digital level on the machined face of its flange, square to the shaft, and take 90° off.',
  },
  'guess-tolerance': {
    what: 'A guess without tolerance: 20 % was taken.',
    howToMeasure: 'Measure it, or type how far off it may be.',
  },
  'unsprung-tolerance': {
    what: 'No tolerance was typed: that of weighing an axle under its hubs was taken, 5 %.',
    howToMeasure:
      'Weigh with the links at mid height and again with them a little up and down; half the spread is the tolerance.',
  },
  'cg-height-tolerance': {
    what: 'No tolerance was typed: that of raising one axle at home was taken, 40 mm.',
    howToMeasure:
      'Raise in three steps, on rated lifting gear, suspension locked; the steps differ by the tolerance.',
  },
  'gauge-tolerance': {
    what: 'No tolerance was typed: that of a stick gauge was taken, 1 psi.',
    howToMeasure: 'Compare two gauges on a cold tyre.',
  },
  'marker-tolerance': {
    what: 'No tolerance was typed: that of a marker on the shock shaft was taken, 1.5 mm.',
    howToMeasure: 'Cycle slowly by jack and see whether the marker slips.',
  },
  'clay-tolerance': {
    what: 'No tolerance was typed: clay springs back and holds dust, 1.5 mm was taken.',
    howToMeasure: 'Press two pieces side by side and compare them.',
  },
  'contact-ratio-one': {
    what: 'Taken to move with the axle: travel ratio 1 ± 0.05.',
    howToMeasure:
      'Springs out, raise the axle by 2 in with both wheels level and measure how far this point moved; divide.',
  },
  'stop-ratio-one': {
    what: 'The stop was taken to move with the axle: travel ratio 1 ± 0.02.',
    howToMeasure: 'Raise the axle by 2 in and measure how far the stop closes on its pad; divide.',
  },
  'spring-ratio-one': {
    what: 'The coil was taken to stand upright on the axle: travel ratio 1 ± 0.03.',
    howToMeasure: 'Raise the axle by 2 in and measure how much shorter the coil got; divide.',
  },
  'shock-ratio-upright': {
    what: 'The shock was taken to lean by up to 20 degrees: travel ratio 0.97 ± 0.03.',
    howToMeasure:
      'Hold a digital level to it, seen from the front and from the side; multiply the two cosines.',
  },
  'spread-share-of-track': {
    what: 'Taken to stand inboard of the tyres, at 0.63 ± 0.10 of the track.',
    howToMeasure: 'Tape from the left one to the right one, at the axle.',
  },
  'unsprung-share': {
    what: 'The axle was taken to weigh the usual 22 to 35 % of what its tyres carry.',
    howToMeasure: 'Springs and shocks off, links at mid height: weigh under each hub.',
  },
  'axle-roll-inertia': {
    what: 'The axle was taken as two wheels and a beam, its roll inertia to 30 %.',
    howToMeasure:
      'Weigh wheels and housing apart and add them up; it matters little unless one wheel hits alone.',
  },
  'body-inertia': {
    what: 'The inertia of the body was taken from its weight, wheelbase and track, to 30 %.',
    howToMeasure: 'Add up the heavy parts with their distances from the centre of gravity.',
  },
  'cg-height': {
    what: 'The centre of gravity was taken at 0.80 ± 0.15 m above the ground.',
    howToMeasure:
      'Weigh one axle level and with the other raised, on rated lifting gear, nobody under or beside the rig.',
  },
  'flex-boxed-frame': {
    what: 'Frame, brackets and bushes were taken to give 9 ± 3 mm on the worst hit, as a boxed frame or tubes do.',
    howToMeasure:
      'Clay at the limiting contact: the gap by the marker at that travel less what the clay shows.',
  },
  'coil-reserve': {
    what: 'The usual 10 mm is kept before the coil goes solid.',
    howToMeasure: 'This is your choice: type what you accept.',
  },
  'shock-reserve': {
    what: 'The usual 10 mm is kept before the shock bottoms.',
    howToMeasure: 'This is your choice: type what you accept.',
  },
  'shock-droop-reserve': {
    what: 'The usual 10 mm is kept before the shock tops out.',
    howToMeasure: 'This is your choice: type what you accept.',
  },
  'stop-rate-factor': {
    what: 'The stop was taken to push harder when hit fast: by 25 ± 15 % at 1 m/s.',
    howToMeasure: 'Compare a slow press test with a drop test, or ask who made it.',
  },
  'stop-curve-power': {
    what: 'There is no press test: a power law to full crush was taken, of the usual shape and, unless typed, force for its material.',
    howToMeasure: 'Press it in steps of 5 mm and read the force. Guard, face shield, no face in line.',
  },
  'tyre-rate': {
    what: 'The tyre was taken as a light-truck tyre of 33 to 37 in at its pressure, to a third; without a pressure, to more than half.',
    howToMeasure: 'Weigh the corner while raising it: change of load ÷ change of hub height.',
  },
  'tyre-damping': {
    what: 'Tyre damping was taken as 300 ± 200 N·s/m. It matters little.',
    howToMeasure: 'No simple way at home.',
  },
  'tyre-radius': {
    what: 'The loaded radius was taken as 17 ± 2 in. It bears on the length of its contact and on the drawing.',
    howToMeasure: 'Tape from the ground to the hub centre.',
  },
  'metal-rate': {
    what: 'Metal on metal was taken as near rigid.',
    howToMeasure: 'No need: what counts is whether it is reached.',
  },
  reserve: {
    what: 'The usual 10 mm is kept on the worst hit.',
    howToMeasure: 'This is your choice: 6 to 13 mm to stiff frames, 13 to 20 mm to flexible ones.',
  },
  'seat-limit': {
    what: 'A peak of 2.5 g above rest was taken as what you accept.',
    howToMeasure: 'This is your choice: type what you accept.',
  },
  'strap-stretch': {
    what: 'The strap was taken to stretch by 6 ± 4 % at full load.',
    howToMeasure: 'Hang a known load on it and measure, or ask who made it.',
  },
  'strap-ratio-one': {
    what: 'The strap was taken to move with the shock: ratio 1 ± 0.05.',
    howToMeasure: 'Lower the axle by 2 in and measure how far strap ends and shock eyes parted; divide.',
  },
  'bar-ratio-one': {
    what: 'The links of the anti-roll bar were taken to move with the axle: travel ratio 1 ± 0.05.',
    howToMeasure: 'Raise the axle by 2 in and measure how far a link moved; divide.',
  },
  'no-rate-factor': {
    what: 'How much harder this stop is when hit is said by its dynamic factor or its oil; no rate factor was put on top.',
    howToMeasure: 'No need, unless you would rather type a rate factor instead.',
  },
  'gas-index': {
    what: 'The gas was taken between a slow and a fast stroke: index 1.2 ± 0.2.',
    howToMeasure: 'No simple way at home: slow strokes go with 1, hits with 1.4.',
  },
  'gas-column': {
    what: 'The gas column was worked out from the force at full stroke, 6 kN unless typed, to a third of what is left of it there.',
    howToMeasure:
      'Ask who made it for the gas volume and divide by the rod area, or press it slowly to full stroke and type that force. Guard, no face in line.',
  },
  'vent-discharge': {
    what: 'The vent hole was taken as sharp-edged, discharge 0.62 ± 0.1, and the air as that at sea level and 20 °C.',
    howToMeasure:
      'No simple way at home. A drilled passage passes up to 0.8, a well rounded edge almost 1. Air on a high pass is a fifth to a third thinner, and the vent takes out less by as much.',
  },
  'shock-gas-rise': {
    what: 'The gas of the shock was taken to gain 35 ± 25 % of its pressure over the whole stroke.',
    howToMeasure:
      'Lever it slowly to both ends on a scale; the force there less the force open, divided by it.',
  },
  'shock-hand-push': {
    what: 'The force is that of one push by hand: known to the speed of the push, beyond it the usual shape was laid on, extrapolated.',
    howToMeasure: 'Have the shock put on a bench: no hand reaches the speed of a hit.',
  },
  'tyre-rate-by-size': {
    what: 'The tyre rate was worked out from its size and pressure by a regression on road tyres, to 30 %.',
    howToMeasure: 'Weigh the corner while raising it: change of load ÷ change of hub height.',
  },
  'unsprung-share-independent': {
    what: 'Wheels, hubs and half of the arms were taken to weigh the usual 12 to 20 % of what the two tyres carry.',
    howToMeasure: 'Springs and shocks off, arms at mid height: weigh under each hub.',
  },
  'independent-roll-inertia': {
    what: 'Two wheels that move apart have the roll inertia mass × (track/2)²: that follows from their mass.',
    howToMeasure: 'No need: weigh the wheels with their hubs and half of the arms.',
  },
  'driver-mass': {
    what: 'The driver was taken to weigh 85 ± 20 kg as he sits.',
    howToMeasure: 'Bathroom scale, in clothes, boots and helmet.',
  },
  'driver-on-seat': {
    what: 'Three quarters of the driver, ± 0.1, were taken to rest on the seat, the rest on his feet.',
    howToMeasure:
      'Sit on a bathroom scale on a chair, feet on the floor as in the rig; divide by your weight.',
  },
  'seat-place': {
    what: 'The seat was taken a little behind the middle of the wheelbase, and the left one of two.',
    howToMeasure: 'Tape from the front axle back to the hips, and from the middle of the rig out to them.',
  },
  'seat-frequency': {
    what: 'The seat was taken as foam on a pan: its driver bobs at 4 ± 1.5 Hz.',
    howToMeasure:
      'Mark the belt height against the cage, sit down, mark again: type the difference as the sag.',
  },
  'seat-damping-ratio': {
    what: 'Driver and seat were taken to have 0.3 ± 0.1 of critical damping.',
    howToMeasure: 'No simple way at home.',
  },
  'cg-lift-free-suspension': {
    what: 'The suspension was free while an axle was raised: what its springs gave was taken off the height, known to half.',
    howToMeasure: 'Lock it: bars of the length of the shocks in their place, then raise and weigh again.',
  },
  'shock-damping-ratio': {
    what: 'There is no bench curve: the force was reckoned from shares of critical damping.',
    howToMeasure: 'Have the shock put on a bench, or time a known weight falling on it by slow-motion video.',
  },
};
