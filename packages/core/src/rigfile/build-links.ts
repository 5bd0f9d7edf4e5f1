import type { End } from '../finding/place.ts';
import {
  LINKAGE_KINDS,
  type LinkageKind,
  type LinkName,
  type MeasuredLink,
  type MeasuredLinkage,
  type TapedPair,
  type TapedPoint,
} from '../rig/linkage.ts';
import { apart, type Datums, isWhole, lengthText, pairAlone, placeOf, sidedPair } from './build-point.ts';
import { TAPED } from './build-spring.ts';
import type { Gaps } from './gaps.ts';
import { LINKS_OF_KIND, SINGLE_LINKS } from './link-rules.ts';

/** Ends of a link nearer than this are one point, whatever the tape says [m]. */
const ONE_POINT = 0.005;
/** A length by its points and one by the tape may differ by so much more than both are uncertain. */
const FAR_OFF = 3;
const EITHER_END = '{ ahead: 1 in, spread: 38 in, aboveFloor: 15 in }';

/** The links of one end, or null when nothing is typed about them. */
export function buildLinkage(gaps: Gaps, end: End, datums: Datums): MeasuredLinkage | null {
  const key = `${end}.links`;
  if (gaps.names(key).length === 0) return null;
  const kind = LINKAGE_KINDS.find((each) => each === gaps.text(`${key}.kind`));
  if (!kind) {
    // A kind that is none has its problem already, by its shape.
    if (gaps.at(`${key}.kind`) === undefined) gaps.missing(`${key}.kind`, LINKAGE_KINDS.join(', '));
    return null;
  }
  const wanted = LINKS_OF_KIND[kind];
  for (const name of gaps.names(key)) {
    if (name !== 'kind' && !wanted.includes(name as LinkName) && NAMES.includes(name))
      gaps.problem('rig-inconsistent', `${key}.${name}`, name, acceptedLinks(kind));
  }
  const links = wanted.flatMap((name) => buildLink(gaps, end, kind, name, datums));
  checkTwins(gaps, end, links);
  if (kind === 'triangulated') checkAngled(gaps, end, links);
  return { kind, links };
}

const NAMES: readonly string[] = ['lower', 'upper', 'arm', 'panhard'];

const acceptedLinks = (kind: LinkageKind): string =>
  LINKS_OF_KIND[kind].length > 0 ? `${LINKS_OF_KIND[kind].join(', ')} for ${kind}` : `no links for ${kind}`;

function buildLink(
  gaps: Gaps,
  end: End,
  kind: LinkageKind,
  name: LinkName,
  datums: Datums,
): readonly MeasuredLink[] {
  const key = `${end}.links.${name}`;
  const single = SINGLE_LINKS[kind]?.includes(name) ?? false;
  if (!hasBothEnds(gaps, key, single)) return [];
  const before = gaps.problems.length;
  if (single) {
    const pair = pairAlone(gaps, key, datums);
    const link: MeasuredLink = { id: name, name, side: null, ...pair };
    if (gaps.problems.length === before) checkLink(gaps, end, key, link);
    return [link];
  }
  const sides = sidedPair(gaps, key, datums);
  const links = (['left', 'right'] as const).map(
    (side): MeasuredLink => ({ id: `${name}-${side}`, name, side, ...sides[side] }),
  );
  if (gaps.problems.length === before)
    for (const link of links) if (link.side === 'left' || isTyped(link)) checkLink(gaps, end, key, link);
  return links;
}

/** Whether anything of a right one was typed. */
const isTyped = ({ axle, frame }: MeasuredLink): boolean =>
  [axle, frame].some(({ key }) => key.includes('.right.'));

/** Asks for an end that is missing as a whole. */
export function hasBothEnds(gaps: Gaps, key: string, single: boolean): boolean {
  const point = single ? EITHER_END.replace('spread: 38', 'left: 9') : EITHER_END;
  if (gaps.at(key) === undefined) {
    gaps.ask(key, `axle: ${point}, frame: ${point}`);
    return false;
  }
  const missing = ['axle', 'frame'].filter((which) => gaps.at(`${key}.${which}`) === undefined);
  for (const which of missing) gaps.ask(`${key}.${which}`, point);
  return missing.length === 0;
}

/** Points that no link could stand between. */
function checkLink(gaps: Gaps, end: End, key: string, link: MeasuredLink): void {
  if (!isWhole(gaps, link.axle, link.frame)) return;
  const { axle, frame, name } = link;
  if (![axle, frame].every((point) => checkAboveFloor(gaps, point))) return;
  const like = axle.ahead.reading.text;
  const length = apart(axle, frame);
  const said = (value: number) => lengthText(value, like);
  if (length < ONE_POINT) {
    const found = `${axle.key} and ${frame.key}, ${said(length)} apart`;
    gaps.problem('rig-points-coincide', frame.key, found, `a link of more than ${said(ONE_POINT)}`);
    return;
  }
  const [ax, ay] = placeOf(axle);
  const [fx, fy] = placeOf(frame);
  if (name === 'panhard') {
    if (Math.abs(ay - fy) < Math.abs(ax - fx)) {
      const found = `${axle.key} and ${frame.key}, ${said(Math.abs(ay - fy))} apart sideways`;
      const accepted = `ends further apart sideways than fore and aft, ${said(Math.abs(ax - fx))}`;
      gaps.problem('rig-point-wrong-side', frame.key, found, accepted);
    }
    checkLength(gaps, key, axle, frame);
    return;
  }
  checkSide(gaps, end, { axle, frame });
  checkLength(gaps, key, axle, frame);
}

function checkAboveFloor(gaps: Gaps, point: TapedPoint): boolean {
  const [, , height] = placeOf(point);
  if (height > 0) return true;
  const found = `${point.key}, ${lengthText(-height, point.up.reading.text)} below the floor`;
  gaps.problem('rig-point-wrong-side', point.key, found, 'a point above the floor');
  return false;
}

/** A length that was taped too, against the points. */
function checkLength(gaps: Gaps, key: string, axle: TapedPoint, frame: TapedPoint): void {
  const length = apart(axle, frame);
  const said = (value: number) => lengthText(value, axle.ahead.reading.text);
  const taped = gaps.typedReading(`${key}.length`, TAPED);
  if (!taped) return;
  const off = Math.abs(taped.value - length);
  if (off > FAR_OFF * Math.hypot(taped.plus, POINT_DOUBT))
    gaps.problem(
      'rig-inconsistent',
      taped.key,
      taped.text,
      `about ${said(length)}, as ${axle.key} and ${frame.key} stand: they are ${said(off)} off`,
    );
}

/** 95 % half-width of a length worked out from two points, each taped to 3 mm [m]. */
const POINT_DOUBT = 0.0045;

/** Links of one end run from its axle towards the middle of the rig. */
export function checkSide(gaps: Gaps, end: End, { axle, frame }: TapedPair): void {
  const [ax] = placeOf(axle);
  const [fx] = placeOf(frame);
  const inward = end === 'front' ? ax - fx : fx - ax;
  if (inward > 0) return;
  const found = `${frame.key}, ${lengthText(Math.abs(inward), axle.ahead.reading.text)} ${end === 'front' ? 'ahead of' : 'behind'} ${axle.key}`;
  gaps.problem(
    'rig-point-wrong-side',
    frame.key,
    found,
    end === 'front' ? 'a point behind the other end' : 'a point ahead of the other end',
  );
}

/** Two links between the same points hold the axle no better than one. */
function checkTwins(gaps: Gaps, end: End, links: readonly MeasuredLink[]): void {
  for (const [index, one] of links.entries())
    for (const other of links.slice(index + 1)) {
      if (!isWhole(gaps, one.axle, one.frame, other.axle, other.frame)) continue;
      const off = Math.max(apart(one.axle, other.axle), apart(one.frame, other.frame));
      if (off >= ONE_POINT) continue;
      const found = `${end} ${one.id} and ${end} ${other.id}, ${lengthText(off, one.axle.ahead.reading.text)} apart`;
      gaps.problem('rig-points-coincide', `${end}.links.${other.name}`, found, 'two links in two places');
    }
}

/** Without a Panhard bar, only links at an angle hold an axle sideways. */
function checkAngled(gaps: Gaps, end: End, links: readonly MeasuredLink[]): void {
  const left = links.filter(({ side }) => side === 'left');
  if (left.length < 2 || !left.every(({ axle, frame }) => isWhole(gaps, axle, frame))) return;
  const leans = left.map(
    ({ axle, frame }) => Math.abs(placeOf(axle)[1] - placeOf(frame)[1]) / apart(axle, frame),
  );
  if (Math.max(...leans) >= LEAST_LEAN) return;
  const [found] = left.map(({ axle }) => axle.left.reading).slice(-1);
  gaps.problem(
    'rig-inconsistent',
    `${end}.links.upper`,
    found?.text ?? '',
    'a pair further apart at one end than at the other: nothing else holds a triangulated axle sideways',
  );
}

/** Sideways ÷ length of a link below which it holds nothing sideways: three degrees. */
const LEAST_LEAN = 0.05;
