import type { Figure } from '../finding/figure.ts';
import { CORNERS, type Corner } from '../finding/place.ts';
import type { Setup } from '../rig/setup.ts';
import { centresOfGravity, type SampledPlace } from './centre-of-gravity.ts';
import { columnOf, figureOf, unsure } from './columns.ts';
import { drawsOf, type TrialOptions } from './draws.ts';
import { endStance } from './end-stance.ts';
import { stanceFindings } from './findings.ts';
import { movesOf } from './moves.ts';
import type { StanceResult } from './result.ts';
import { weightsOf } from './weights.ts';

/**
 * Statics of a setup: masses above and below the springs, centre of gravity, settled springs, ride and hop
 * frequencies, damping ratios. Every figure with the 95 % half-width that the readings give it.
 *
 * @returns plain data, the same for the same setup, trials and seed
 * @validity level ground, springs carry the whole body, small motion for the modes; each module of this room says more
 */
export function stanceOf(setup: Setup, options: TrialOptions = {}): StanceResult {
  const draws = drawsOf(setup.rig, options);
  const length = draws.trials + 1;
  const weights = weightsOf(setup, draws);
  const { corner, total, sprung, sprungCorner } = weights;
  const moves = { front: movesOf(setup, 'front', draws), rear: movesOf(setup, 'rear', draws) };
  const { whole, body } = centresOfGravity(setup, weights, moves, draws);
  const liftKnown = moves.front.needs.length + moves.rear.needs.length === 0;
  const ends = {
    front: endStance(setup, 'front', weights, draws),
    rear: endStance(setup, 'rear', weights, draws),
  };
  const sprungCornerMass = {} as Record<Corner, Figure>;
  for (const place of CORNERS) sprungCornerMass[place] = figureOf('mass', sprungCorner[place]);
  const share = (a: Corner, b: Corner) =>
    figureOf(
      'ratio',
      columnOf(length, (i) => (corner[a][i] + corner[b][i]) / total[i]),
    );
  const crossShare = share('frontLeft', 'rearRight');
  return {
    setup: setup.id,
    totalMass: figureOf('mass', total),
    sprungMass: figureOf('mass', sprung),
    sprungCornerMass,
    frontShare: share('frontLeft', 'frontRight'),
    crossShare,
    cg: place(whole, liftKnown),
    sprungCg: place(body, liftKnown),
    ends,
    findings: stanceFindings(setup, weights, crossShare, draws),
  };
}

/** Without a length that a lift rests on, nobody knows how surely the height is known. */
const place = ({ behindFrontAxle, left, height }: SampledPlace, liftKnown: boolean): StanceResult['cg'] => ({
  behindFrontAxle: figureOf('length', behindFrontAxle),
  left: figureOf('length', left),
  height: liftKnown ? figureOf('length', height) : unsure(figureOf('length', height)),
});
