import type { ProblemCode } from '../finding/codes.ts';
import type { Problem } from '../finding/problem.ts';
import { symmetricEigen } from '../numerics/symmetric-eigen.ts';
import { formatValue } from '../quantity/format.ts';
import type { UnitSystem } from '../quantity/quantity.ts';
import { freeRows, LEVER } from './blame.ts';
import { PANHARD } from './conditions.ts';
import type { AxleGeometry, Link, LinkageKind } from './geometry.ts';
import { FREE, WIND, X, Y, YAW } from './layout.ts';
import { solverOf } from './solve.ts';

const LOWERS = ['lower-left', 'lower-right'];
const UPPERS = ['upper-left', 'upper-right'];

/** The links that each kind has. */
const LINKS_OF: Readonly<Record<LinkageKind, readonly string[]>> = {
  'three-link': [...LOWERS, 'upper', PANHARD],
  'four-link': [...LOWERS, ...UPPERS, PANHARD],
  triangulated: [...LOWERS, ...UPPERS],
  'radius-arms': ['arm-left', 'arm-right', PANHARD],
  leaf: [],
};

/** Two points nearer than that are one [m]; no rod of a rig is shorter than its two joints. */
const ONE_POINT = 0.02;
/** A link set that turns 1 mm of play into more than this [m] of axle does not locate it. common practice, no source */
const LOOSE = 0.03;
const MILLIMETRE = 0.001;

export interface GeometryAsked {
  /** Begins each key: `rear.links`. */
  readonly key: string;
  readonly system: UnitSystem;
}

/**
 * What keeps a geometry from being worked with, all in one pass: links that its kind lacks or does not have, a link
 * without length, joints on the wrong side of the centre line, a link whose ends are exchanged, and a set that leaves
 * the axle loose.
 *
 * Loose: with the joints' play p and turns counted at half a metre, the axle moves by p ÷ σ, where σ is the smallest
 * singular value of the exact slopes of the conditions at ride height.
 *
 * @failure `links-missing`, `links-unknown`, `links-no-length`, `links-wrong-side`, `links-ends-exchanged`,
 * `links-axle-loose`
 * @source the bound on the play is common practice, no source
 */
export function geometryProblems(geometry: AxleGeometry, asked: GeometryAsked): readonly Problem[] {
  const wanted = LINKS_OF[geometry.kind];
  const say = (code: ProblemCode, part: string, found: string, accepted: string): Problem => ({
    code,
    where: { key: part === '' ? asked.key : `${asked.key}.${part}` },
    found,
    accepted,
  });
  const length = (value: number) => formatValue(value, 'length', { system: asked.system });
  const ids = geometry.links.map(({ id }) => id);
  const known = wanted.length === 0 ? 'no links, a leaf pair guides the axle by itself' : wanted.join(', ');
  const problems = [
    ...wanted.filter((id) => !ids.includes(id)).map((id) => say('links-missing', id, '', known)),
    ...ids
      .filter((id, i) => !wanted.includes(id) || ids.indexOf(id) < i)
      .map((id) => say('links-unknown', id, id, known)),
    ...geometry.links.flatMap((link) => pointProblems(geometry, link, length, say)),
  ];
  if (problems.length > 0 || wanted.length === 0) return problems;
  const loose = loosest(geometry);
  if (loose.play <= LOOSE) return [];
  const found = `${loose.way}, ${Number.isFinite(loose.play) && loose.play < 10 ? length(loose.play) : 'without end'}`;
  return [say('links-axle-loose', '', found, `${length(LOOSE)} at most; ${loose.cure}`)];
}

type Say = (code: ProblemCode, part: string, found: string, accepted: string) => Problem;

function pointProblems(
  { centre }: AxleGeometry,
  { id, axle, body }: Link,
  length: (value: number) => string,
  say: Say,
): Problem[] {
  const apart = Math.hypot(axle[0] - body[0], axle[1] - body[1], axle[2] - body[2]);
  if (apart < ONE_POINT)
    return [
      say(
        'links-no-length',
        id,
        `axle joint and frame joint ${length(apart)} apart`,
        `two joints at least ${length(ONE_POINT)} apart`,
      ),
    ];
  const side = id.endsWith('-left') ? 1 : id.endsWith('-right') ? -1 : 0;
  const name = side > 0 ? 'left' : 'right';
  const problems = (
    [
      ['axle', axle],
      ['frame', body],
    ] as const
  )
    .filter(([, point]) => side !== 0 && side * point[1] < 0)
    .map(([end, point]) =>
      say(
        'links-wrong-side',
        `${id}.${end}`,
        `${length(Math.abs(point[1]))} to the ${side > 0 ? 'right' : 'left'} of the centre line`,
        `a joint on the ${name}`,
      ),
    );
  const fromHub = (point: Link['axle']) => Math.hypot(point[0] - centre[0], point[2] - centre[2]);
  if (id !== PANHARD && fromHub(axle) > fromHub(body))
    problems.push(
      say(
        'links-ends-exchanged',
        id,
        `axle joint ${length(fromHub(axle))} from the hub line and frame joint ${length(fromHub(body))}`,
        'the axle joint nearer to the hub line than the frame joint',
      ),
    );
  return problems;
}

/** How far the worst held direction of the axle moves with a millimetre of play, and which it is. */
function loosest(geometry: AxleGeometry): {
  readonly play: number;
  readonly way: string;
  readonly cure: string;
} {
  const rows = freeRows(solverOf(geometry));
  const columns = Array.from({ length: FREE }, (_, k) => rows.map((row) => row[k]));
  const normal = columns.map((a) => columns.map((b) => a.reduce((sum, entry, i) => sum + entry * b[i], 0)));
  const { values, vectors } = symmetricEigen(normal);
  const [worst] = vectors;
  const lead = worst.reduce((most, part, k) => (Math.abs(part) > Math.abs(worst[most]) ? k : most), 0);
  return { play: MILLIMETRE / Math.sqrt(Math.max(values[0], 0)), ...WAYS[lead] };
}

const WAYS: Readonly<Record<number, { readonly way: string; readonly cure: string }>> = {
  [X]: { way: 'forward and back', cure: 'links that run fore and aft' },
  [Y]: { way: 'sideways', cure: 'a Panhard across, or a pair of links well apart in angle from above' },
  [YAW]: { way: `in steer, ${LEVER} m out from its middle`, cure: 'two links well apart from left to right' },
  [WIND]: { way: `in wind-up, ${LEVER} m out from the hub line`, cure: 'uppers well above the lowers' },
};
