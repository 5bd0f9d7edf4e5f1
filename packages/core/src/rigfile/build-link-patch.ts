import { JOINT_KINDS, LINK_NAMES, type LinkName } from '../rig/linkage.ts';
import type { EndPatch, LinkPatch, PointPatch, ShaftPatch } from '../rig/setup-patch.ts';
import { TAPED } from './build-spring.ts';
import type { Gaps } from './gaps.ts';

/** What a setup changes about links and shaft. */
export function linkPatchOf(gaps: Gaps, key: string): Pick<EndPatch, 'links' | 'shaft'> {
  const links: Partial<Record<LinkName, LinkPatch>> = {};
  for (const name of LINK_NAMES.filter((each) => gaps.names(`${key}.links`).includes(each))) {
    const link = linkPatch(gaps, `${key}.links.${name}`);
    if (Object.keys(link).length > 0) links[name] = link;
  }
  const shaft = gaps.at(`${key}.shaft`) === undefined ? {} : shaftPatch(gaps, `${key}.shaft`);
  return {
    ...(Object.keys(links).length > 0 ? { links } : {}),
    ...(Object.keys(shaft).length > 0 ? { shaft } : {}),
  };
}

function linkPatch(gaps: Gaps, key: string): LinkPatch {
  return present({
    axle: pointPatch(gaps, `${key}.axle`),
    frame: pointPatch(gaps, `${key}.frame`),
    longer: read(gaps, `${key}.longer`),
  });
}

function shaftPatch(gaps: Gaps, key: string): ShaftPatch {
  const joint = (name: string) => JOINT_KINDS.find((kind) => kind === gaps.text(`${key}.${name}`));
  return present({
    case: pointPatch(gaps, `${key}.case`),
    pinionJoint: joint('pinionJoint'),
    caseJoint: joint('caseJoint'),
    slip: read(gaps, `${key}.slip`),
    slipIn: read(gaps, `${key}.slipIn`),
  });
}

function pointPatch(gaps: Gaps, key: string): PointPatch | undefined {
  const patch = present({
    ahead: read(gaps, `${key}.ahead`),
    out: read(gaps, `${key}.out`),
    up: read(gaps, `${key}.up`),
  });
  return Object.keys(patch).length > 0 ? patch : undefined;
}

const read = (gaps: Gaps, key: string) => gaps.typedReading(key, TAPED) ?? undefined;

export function present<T extends object>(record: T): { [K in keyof T]?: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]?: Exclude<T[K], undefined>;
  };
}
