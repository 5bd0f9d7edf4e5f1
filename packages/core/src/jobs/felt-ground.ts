import { type Envelope, enveloped } from '../course/envelope.ts';
import type { Track } from '../course/sampled.ts';
import { sampleCourse } from '../course/track.ts';
import { usualCams } from '../course/two-cams.ts';
import { contactLength } from '../elements/tyre-contact.ts';
import { cornerAt, ENDS, type End } from '../finding/place.ts';
import type { CourseShape } from '../rig/course-spec.ts';
import { nominal } from '../rig/reading.ts';
import type { Setup } from '../rig/setup.ts';
import { type TyreFeel, type TyreFoot, USUAL_FEEL } from '../rig/tyre-feel.ts';
import { NOMINAL_DRAWS } from '../stance/draws.ts';
import { STANDARD_GRAVITY } from '../stance/gravity.ts';
import { tyreRate } from '../stance/tyre-rate.ts';
import { weightsOf } from '../stance/weights.ts';

/** Kept for each course: setups of one rig seldom differ in their tyres, and two are held side by side. */
const KEPT = 2;

/**
 * The ground of some courses as the tyres of a setup feel it, laid out once for each length of contact.
 *
 * @validity both ends feel the ground by their mean contact length, at the nominal readings of the setup, in every trial.
 *   The length is an upper bound (`tyre-contact`); load that shifts while driving does not change it.
 */
export class FeltGrounds {
  readonly #plain = new Map<CourseShape, Track>();
  readonly #felt = new Map<CourseShape, { readonly key: string; readonly track: Track }[]>();
  readonly #feet = new WeakMap<Setup, { readonly foot: TyreFoot; readonly envelope: Envelope }>();

  constructor(readonly feel: TyreFeel = USUAL_FEEL) {}

  /** The course itself, as a point would feel it. */
  plain(course: CourseShape): Track {
    const known = this.#plain.get(course);
    if (known) return known;
    const track = sampleCourse(course);
    this.#plain.set(course, track);
    return track;
  }

  of(course: CourseShape, setup: Setup): Track {
    const { envelope } = this.#footOf(setup);
    const key = JSON.stringify(envelope);
    const kept = this.#felt.get(course) ?? [];
    const known = kept.find((one) => one.key === key);
    if (known) return known.track;
    const track = enveloped(this.plain(course), envelope);
    this.#felt.set(course, [...kept.slice(1 - KEPT), { key, track }]);
    return track;
  }

  foot(setup: Setup): TyreFoot {
    return this.#footOf(setup).foot;
  }

  #footOf(setup: Setup) {
    const known = this.#feet.get(setup);
    if (known) return known;
    const made = footOf(setup, this.feel);
    this.#feet.set(setup, made);
    return made;
  }
}

function footOf(setup: Setup, feel: TyreFeel): { readonly foot: TyreFoot; readonly envelope: Envelope } {
  const [front, rear] = ENDS.map((end) => tyreAtRest(setup, end));
  const contact = { front: front.contact, rear: rear.contact };
  const length = (front.contact + rear.contact) / 2;
  const envelope: Envelope =
    feel === 'point'
      ? { kind: 'point' }
      : feel === 'footprint'
        ? { kind: 'footprint', length }
        : { kind: 'two-cams', ...usualCams((front.freeRadius + rear.freeRadius) / 2, length) };
  return { foot: { feel, contact, used: feel === 'point' ? 0 : length }, envelope };
}

/** A tyre keeps its free radius: at another pressure or load it stands lower, and on a longer foot. */
function tyreAtRest(setup: Setup, end: End): { readonly contact: number; readonly freeRadius: number } {
  const { base } = setup.ends[end];
  const { cornerMass } = setup.rig;
  const carried = (mass: number): number => (mass * STANDARD_GRAVITY) / 2;
  const pads = carried(cornerMass[cornerAt(end, 'left')].value + cornerMass[cornerAt(end, 'right')].value);
  const { corner } = weightsOf(setup, NOMINAL_DRAWS);
  const load = carried(corner[cornerAt(end, 'left')][0] + corner[cornerAt(end, 'right')][0]);
  const freeRadius = nominal(base.tyre.radius) + pads / nominal(base.tyre.rate);
  // A tyre is flat on its rim long before: half its radius stands in for a setup that overloads it.
  const deflection = Math.min(load / tyreRate(setup.ends[end], NOMINAL_DRAWS)[0], freeRadius / 2);
  return { contact: contactLength(freeRadius - deflection, deflection), freeRadius };
}
