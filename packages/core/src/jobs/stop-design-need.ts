import { bad, good, type Result } from '../finding/problem.ts';
import type { WantedCurve } from '../stopdesign/density-for-curve.ts';
import { along } from './curve-miss.ts';
import { type BandAsked, type StopBand, stopBand } from './stop-band.ts';
import { designStop, type StopDesign, type StopDesignRequest } from './stop-design.ts';
import type { Broken, StopCurve } from './stop-drive.ts';

/** What was taken out of the band of an end, and what came of it there. */
export interface DesignedForNeed {
  readonly demands: readonly { readonly name: string; readonly speed: number }[];
  readonly room: number;
  /** The curve that was followed: full·(crush ÷ room)^power, and the full forces of this power that do [N]. */
  readonly power: number;
  readonly full: number;
  readonly least: number;
  readonly most: number;
  /** The band of all curves that do, at places of the crush [m], [N]. */
  readonly band: {
    readonly crush: readonly number[];
    readonly least: readonly number[];
    readonly most: readonly number[];
  };
  /** Where the middle of the design leaves that band, by which share of its edge; each stretch with its worst. */
  readonly outside: readonly BandMiss[];
  /** What the design breaks when it is driven: in the middle, and at both ends of its own interval. */
  readonly breaks: {
    readonly middle: readonly Broken[];
    readonly soft: readonly Broken[];
    readonly hard: readonly Broken[];
  };
}

export interface BandMiss {
  /** [m] */
  readonly from: number;
  readonly to: number;
  readonly way: 'soft' | 'hard';
  readonly share: number;
}

export interface NeedDesign {
  readonly design: StopDesign;
  readonly need: DesignedForNeed;
}

/** Where a range has no edge on one side, the middle is sought within so many times the edge that it has. */
const OPEN_SPAN = 4;
const CURVE_POINTS = 24;
/** Enough to see which steepness a body can follow. */
const QUICK_TRIALS = 2;

/**
 * A printed stop for one end of a rig, its wanted curve taken from the band of `stopNeed`: of each steepness the curve in the
 * middle of the forces that do, and of those the one that the body follows best; where several are met, the one with the
 * widest range about it. The design is then driven itself.
 *
 * @param shape – its own target and density are not read
 * @failure as `stopNeed` and `designStop`; `stop-need-none` when no curve does
 */
export function designForNeed(
  asked: BandAsked,
  shape: Omit<StopDesignRequest, 'target' | 'density'>,
  onProgress?: (share: number) => void,
): Result<NeedDesign> {
  const found = stopBand(asked, (share) => onProgress?.(0.6 * share));
  if (!found.ok) return found;
  const band = found.value;
  const tried: { readonly wanted: Wanted; readonly missed: number }[] = [];
  for (const wanted of middlesOf(band)) {
    const quick = designStop({ ...shape, target: wanted.curve, density: null, trials: QUICK_TRIALS });
    if (!quick.ok) return quick;
    const missed = Math.max(...quick.value.missed.map(({ share }) => share), 0);
    tried.push({ wanted, missed });
    onProgress?.(0.6 + 0.06 * tried.length);
  }
  if (tried.length === 0)
    return bad({
      code: 'stop-need-none',
      where: { key: '--need' },
      found: asked.demands.map(({ name }) => name).join(', '),
      accepted: 'a lower speed, more travel or damping: lastinch stop need says what must change',
    });
  const best = tried.reduce((a, b) =>
    b.missed < a.missed || (b.missed === a.missed && widthOf(b.wanted) > widthOf(a.wanted)) ? b : a,
  );
  const { curve, power, full, least, most } = best.wanted;
  const answer = designStop({ ...shape, target: curve, density: null });
  if (!answer.ok) return answer;
  const design = answer.value;
  const broken = (pick: 'force' | 'low' | 'high'): readonly Broken[] =>
    [...band.breaks(curveBy(design, pick))].sort();
  const breaks = { middle: broken('force'), soft: broken('low'), hard: broken('high') };
  onProgress?.(1);
  return good({
    design,
    need: {
      demands: asked.demands.map(({ name, speed }) => ({ name, speed })),
      room: band.room,
      power,
      full,
      least,
      most,
      band: { crush: band.crush, least: band.least, most: band.most },
      outside: outsideOf(band, design),
      breaks,
    },
  });
}

interface Wanted {
  readonly curve: WantedCurve;
  readonly power: number;
  readonly full: number;
  readonly least: number;
  readonly most: number;
}

const widthOf = ({ least, most }: Wanted): number => most / least;

/** Of each steepness of which a range does, the curve in the middle of its range. */
function middlesOf({ families, room }: StopBand): readonly Wanted[] {
  return families.flatMap(({ power, range }) => {
    if (range === null) return [];
    const least = range.isLeastOpen ? Math.max(range.least, range.most / OPEN_SPAN) : range.least;
    const most = range.isMostOpen ? Math.min(range.most, range.least * OPEN_SPAN) : range.most;
    const full = Math.sqrt(least * most);
    return [{ curve: wantedCurve(room, power, full), power, full, least, most }];
  });
}

/** As `powerCurve`, at more places: a wanted curve is followed along straight lines. */
function wantedCurve(room: number, power: number, full: number): WantedCurve {
  const share = Array.from({ length: CURVE_POINTS + 1 }, (_, k) => k / CURVE_POINTS);
  return { crush: share.map((s) => s * room), force: share.map((s) => full * s ** power) };
}

/** The design's curve, or an end of its interval, as far as it is open. */
function curveBy({ curve }: StopDesign, pick: 'force' | 'low' | 'high'): StopCurve {
  const crush = [0];
  const force = [0];
  for (const point of curve.slice(1)) {
    const value = point[pick];
    if (value === null || value <= (force[force.length - 1] ?? 0)) break;
    crush.push(point.crush);
    force.push(value);
  }
  return { crush, force };
}

function outsideOf({ crush, least, most }: StopBand, { curve }: StopDesign): readonly BandMiss[] {
  const misses: BandMiss[] = [];
  curve.forEach((point, i) => {
    if (i === 0) return;
    const [low, high] = [least, most].map((force) => along({ crush, force }, point.crush));
    const force = point.force ?? Number.POSITIVE_INFINITY;
    if (force >= low && force <= high) return;
    const way = force < low ? 'soft' : 'hard';
    const share = way === 'soft' ? 1 - force / low : force / high - 1;
    const from = curve[i - 1].crush;
    const last = misses[misses.length - 1];
    // A stretch goes on where the one before ended in the same way.
    if (last?.way === way && last.to === from)
      misses[misses.length - 1] = { ...last, to: point.crush, share: Math.max(share, last.share) };
    else misses.push({ from, to: point.crush, way, share });
  });
  return misses;
}
