import { fromSi, needle, PLACE_NAMES, shownUnit } from '@lastinch/core';
import {
  candidateText,
  curesText,
  DAMPING_GAIN,
  familyText,
  LOOK_AT_STOPS,
  lifeText,
  MOST_ROOM,
  NEED_TRUST,
  NO_CURVE_DOES,
  roomText,
  STOP_CAUTIONS,
  type StopCandidate,
  type StopNeed,
  steepnessText,
} from '@lastinch/core/stops';
import { bandText } from '@lastinch/picture';
import { tableLines, wrap } from './lines.ts';
import type { Paper } from './paper.ts';
import { cautionLines, section } from './sections.ts';

/** The whole answer of `stop need` in lines for a terminal. */
export function stopNeedPage(need: StopNeed, paper: Paper): string[] {
  const { system } = paper;
  const over = need.demands.map(({ name, speed }) => `${name} at ${needle(speed, system)}`).join(', ');
  const driven = need.candidates.filter((one) => 'verdict' in one);
  return [
    ...wrap(
      `${need.rig}, ${need.setup}: which stop the ${PLACE_NAMES[need.end].toLowerCase()} needs over ${over}`,
      paper,
    ).map(paper.ink.heading),
    ...wrap(roomText(need, paper.system), paper, '  '),
    ...section('THE BAND', need.crush.length > 0 ? bandLines(need, driven, paper) : [], paper),
    ...section(
      need.cures === null ? 'FORCE AT THE END OF THE ROOM, BY HOW THE CURVE RISES' : 'NO STOP DOES',
      need.cures === null ? familyLines(need, paper) : cureLines(need, paper),
      paper,
    ),
    ...section(
      'THE STOPS OF THIS RIG',
      need.candidates.flatMap((one) =>
        wrap(
          candidateText(one, { limits: need.limits, system }),
          paper,
          `  ${'verdict' in one ? TAGS[one.verdict] : '????'}  `,
        ),
      ),
      paper,
    ),
    ...section(
      'HOW LONG THE STOP LASTS THAT IS ON IT',
      [...need.life.map((one) => lifeText(one, system)), LOOK_AT_STOPS].flatMap((line) =>
        wrap(line, paper, '  '),
      ),
      paper,
    ),
    ...section('HOW FAR TO TRUST THIS', trustLines(paper), paper),
    ...section('CAUTIONS', [...cautionLines(paper, STOP_CAUTIONS), ...cautionLines(paper)], paper),
  ];
}

const TAGS = { does: 'FINE', open: 'OPEN', 'does-not': 'OVER' } as const;

/** Force against crush, the band shaded, the stops as letters; the axis ends where the stops do. */
function bandLines(need: StopNeed, driven: readonly StopCandidate[], paper: Paper): string[] {
  const { system, width, unicode } = paper;
  const top =
    1.25 * Math.max(need.least[need.least.length - 1] ?? 0, ...driven.map((one) => atRoom(one, need.room)));
  const lines = driven.map((one, i) => ({
    mark: String.fromCharCode(97 + (i % 26)),
    x: one.curve.crush.map((c) => c + one.touchesAfter),
    y: one.curve.force,
  }));
  const shown = (dimension: 'length' | 'force') => {
    const unit = shownUnit(dimension, system, dimension === 'length' ? need.room : top);
    return (value: number) => `${Number(fromSi(value, unit).toPrecision(3))} ${unit.name}`;
  };
  const drawn = bandText({
    band: { x: need.crush, low: need.least, high: need.most },
    lines,
    top,
    width: Math.min(width - 2, 76),
    unicode,
    xText: shown('length'),
    yText: shown('force'),
  });
  const legend = driven.map((one, i) => `${lines[i]?.mark} ${one.id}`).join(', ');
  return [
    ...drawn.map((line) => `  ${line}`),
    ...wrap(
      `Shaded: curves that do run in here. Below it a stop runs past the reserve, above it hits too hard. Slow press: ${legend}. Crush counts from where the present stop touches.`,
      paper,
      '  ',
    ),
  ];
}

/** Force of a stop at the end of the room, or at the end of its own curve [N]. */
function atRoom({ curve, touchesAfter }: StopCandidate, room: number): number {
  const k = curve.crush.findIndex((c) => c + touchesAfter >= room);
  return curve.force[k === -1 ? curve.force.length - 1 : k] ?? 0;
}

function familyLines({ families }: StopNeed, paper: Paper): string[] {
  const rows = families.map((family) => {
    const { least, most } = familyText(family, paper.system);
    return { name: steepnessText(family.power), cells: [least, most] };
  });
  return tableLines({ heads: ['At least', 'At most'], rows }, paper);
}

const cureLines = (need: StopNeed, paper: Paper): string[] => [
  ...wrap(NO_CURVE_DOES, paper, '  '),
  ...(need.cures === null
    ? []
    : curesText(need.cures, need.demands, {
        system: paper.system,
        most: { room: MOST_ROOM, damping: DAMPING_GAIN },
      })
  ).flatMap((line) => wrap(line, paper, '  → ')),
];

const trustLines = (paper: Paper): string[] => NEED_TRUST.flatMap((line) => wrap(line, paper, '  '));
