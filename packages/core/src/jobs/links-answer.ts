import type { FindingCode } from '../finding/codes.ts';
import type { Figure } from '../finding/figure.ts';
import type { Finding, Remedy, Severity } from '../finding/finding.ts';
import type { LimitOf, LinkLineId } from '../finding/link-lines.ts';
import type { End, Place, Side } from '../finding/place.ts';
import type { AxleCurves, DragLink } from '../linkage/curves-result.ts';
import type { AxleGeometry } from '../linkage/geometry.ts';
import type { MovingLine, Reach, TiePoint } from '../linkage/reach.ts';
import type { Shaft, ShaftState } from '../linkage/shaft.ts';
import type { ShaftTravel } from '../linkage/shaft-travel.ts';
import type { TravelRange } from '../linkage/travel-range.ts';
import type { Articulation } from '../travel/articulation-result.ts';

/** One thing that a proposal moves. */
export interface KnockOnLine {
  /** Unique within an answer: `joint-droop.rear.case`. */
  readonly id: string;
  readonly of: LinkLineId;
  readonly place: Place;
  /** Which one at that place: `case`, `pinion`, `left`, `right`; else empty. */
  readonly part: string;
  /** Null where it cannot be told for that setup. */
  readonly before: Figure | null;
  readonly after: Figure | null;
  /** after − before, trial by trial: what both have wrong in common falls out. */
  readonly change: Figure | null;
  /** Of the setup asked for; null where there is none. */
  readonly limit: Figure | null;
  readonly limitOf: LimitOf | null;
  /** Distance to the limit on its good side, negative beyond it. */
  readonly room: Figure | null;
  /** Share of its room that is used: 1 at the limit, more beyond it; null without a limit. */
  readonly used: number | null;
  /** How the limit is kept; null without one. A rule of thumb that is not kept is `unproven`, never `over`. */
  readonly kept: Severity | null;
  /** Findings of the answer that speak of it, and what can be done. */
  readonly findings: readonly FindingCode[];
  readonly remedies: readonly Remedy[];
}

/** What ends the way of an axle that is looked at: the stop fully crushed, and the strap or else the open shock. */
export interface LinkRange extends TravelRange {
  readonly droopEnds: 'strap' | 'shock' | 'assumed';
}

export interface LinkedShaft {
  readonly shaft: Shaft;
  readonly travel: ShaftTravel;
  /** At the bumps of the curves, both wheels alike; null where the links do not go. */
  readonly overBump: readonly (ShaftState | null)[];
}

export interface LinkedHose {
  /** Null for one in the middle. */
  readonly side: Side | null;
  readonly line: MovingLine;
  readonly freeLength: number;
  readonly reach: Reach;
  readonly tie: { readonly link: string; readonly point: TiePoint } | null;
}

/** Everything of one end with measured links, at the ride height of one setup; nominal readings. */
export interface EndLinksAnswer {
  readonly geometry: AxleGeometry;
  readonly range: LinkRange;
  /** Over bump and droop of the range and roll to either side, evenly, ride height among them. */
  readonly curves: AxleCurves;
  readonly shaft: LinkedShaft | null;
  readonly hoses: readonly LinkedHose[];
  readonly dragLink: DragLink | null;
}

/** Something that was not measured, so that its lines are left out. */
export interface LinksMissing {
  readonly end: End;
  readonly what:
    | 'links'
    | 'spring-mounts'
    | 'shock-mounts'
    | 'stop-mounts'
    | 'shaft'
    | 'slip'
    | 'axle-ratio'
    | 'hose'
    | 'steering'
    | 'pad';
}

/** Road speed at which shafts are judged [m/s]. */
export interface LinksRoadSpeed {
  readonly speed: number;
  /** `course`: the fastest one of the rig file; `usual`: 80 km/h, because nobody said. */
  readonly from: 'asked' | 'course' | 'usual';
}

export interface LinksAnswer {
  readonly rig: string;
  readonly setup: string;
  /** Null when a setup is looked at alone. */
  readonly against: string | null;
  readonly ends: Readonly<Record<End, EndLinksAnswer | null>>;
  readonly endsBefore: Readonly<Record<End, EndLinksAnswer | null>>;
  /** Turn of the body since the rig was measured, nose down positive [rad]. */
  readonly pitch: { readonly before: number; readonly after: number };
  /** One wheel up, the other down: each axle, either side, and a ramp. */
  readonly articulation: { readonly before: Articulation; readonly after: Articulation };
  /** What changes, the nearest to its limit first. Empty for a setup against itself. */
  readonly knockOn: readonly KnockOnLine[];
  /** What stays, in the same order. */
  readonly steady: readonly KnockOnLine[];
  readonly missing: readonly LinksMissing[];
  /** Of `setup`, worst first. */
  readonly findings: readonly Finding[];
  readonly roadSpeed: LinksRoadSpeed;
  /** Of everything that follows links, and of stability; travel is drawn with as many as `check`. */
  readonly trials: number;
  readonly seed: number;
}

export interface LinksRequest {
  readonly setup: string;
  /** The rig as measured when left out. */
  readonly against?: string;
  /** Few while somebody drags a point. Left out: 256 for links and stability, 2048 for travel. */
  readonly trials?: number;
  readonly seed?: number;
  /** [m/s]; the fastest course of the rig when left out. */
  readonly roadSpeed?: number;
}
