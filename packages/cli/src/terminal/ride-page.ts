import {
  CORNERS,
  type Corner,
  type CornerRide,
  type Figure,
  formatFigure,
  formatValue,
  PLACE_NAMES,
  pathsText,
  type RideAnswer,
  type RideStatus,
  tyreFootText,
} from '@lastinch/core';
import { exposureLines, exposureNoteLines } from './exposure-table.ts';
import { tableLines, wrap } from './lines.ts';
import type { Paper } from './paper.ts';
import { cautionLines, findingLines, section } from './sections.ts';

const ENDED: Readonly<Record<Exclude<RideStatus, 'finished'>, string>> = {
  'step-limit': 'The calculation ran out of steps: the figures hold only up to',
  'left-validity':
    'The rig left what this model describes (a roll-over, an axle out of reach): the figures hold only up to',
  cancelled: 'Stopped: the figures hold only up to',
};

/** A ride over one course. */
export interface Ridden {
  readonly answer: RideAnswer;
  readonly against: RideAnswer | null;
  /** False for a drop, which knows no speed. */
  readonly driven: boolean;
  /** The course in a few words. */
  readonly ground: string;
}

/** The whole answer of `ride` in lines for a terminal: course by course, and before several of them all at a glance. */
export function ridesPage(rides: readonly Ridden[], paper: Paper): string[] {
  const pages = rides.map((ridden) => coursePage(ridden, paper));
  const glance = rides.length < 2 ? [] : [...glanceLines(rides, paper), ''];
  return [
    ...glance,
    ...pages.flatMap((page, k) => (k === 0 ? page : ['', ...page])),
    ...rides
      .slice(0, 1)
      .flatMap(({ answer }) => section('ABOUT THE SEAT', exposureNoteLines(answer, paper), paper)),
    ...section('CAUTIONS', cautionLines(paper), paper),
  ];
}

/** One row a course and setup, to compare. */
function glanceLines(rides: readonly Ridden[], paper: Paper): string[] {
  const rows = rides.flatMap(({ answer, against, driven }) =>
    [answer, ...(against === null ? [] : [against])].map((one) => {
      const speed = driven ? ` at ${formatValue(one.speed, 'speed', paper)}` : '';
      const { rms, lowPassedPeak } = one.exposure.figures;
      return {
        name: `${one.course}${speed}${against === null ? '' : `, ${one.setup}`}`,
        cells: [
          formatFigure(leastClearance(one), paper),
          rms === null ? 'unknown' : formatFigure(rms, { ...paper, unit: 'm/s²' }),
          lowPassedPeak === null ? 'unknown' : formatFigure(lowPassedPeak, paper),
        ],
      };
    }),
  );
  const heads = ['Least clearance', 'Seat r.m.s.', 'Seat peak'];
  const [name = ''] = rides.map(({ answer }) => answer.rig);
  return [
    ...wrap(`${name}: ${rides.length} courses at a glance`, paper).map(paper.ink.heading),
    ...tableLines({ heads, rows }, paper),
  ];
}

const leastClearance = ({ corners }: RideAnswer): Figure =>
  CORNERS.map((corner) => corners[corner].clearance).reduce((a, b) => (b.value < a.value ? b : a));

function coursePage({ answer, against, driven, ground }: Ridden, paper: Paper): string[] {
  const answers = [answer, ...(against === null ? [] : [against])];
  const speed = driven ? ` at ${formatValue(answer.speed, 'speed', paper)}` : '';
  const title = `${answer.rig}: ${answers.map((one) => one.setup).join(', held against ')}, over ${answer.course}${speed}`;
  return [
    ...wrap(title, paper).map(paper.ink.heading),
    ...wrap(`The course: ${ground}.`, paper),
    ...answers.flatMap((one) => {
      const who = against === null ? 'On this ground' : `${one.setup} on this ground`;
      return [
        ...wrap(`${who}: ${tyreFootText(one.tyres, paper)}.`, paper),
        ...wrap(`Ratios: ${pathsText(one.paths)}.`, paper),
      ];
    }),
    ...answers.flatMap((one) => {
      const { status, time, duration } = one.run;
      if (status === 'finished') return [];
      const until = `${time.toFixed(2)} of ${duration.toFixed(2)} s`;
      return wrap(`${one.setup}: ${ENDED[status]} ${until}.`, paper, '  ! ');
    }),
    ...answers.flatMap((one) => [
      ...section(
        against === null ? 'FINDINGS' : `FINDINGS: ${one.setup}`,
        findingLines(one.findings, paper),
        paper,
      ),
      ...section(`WORST MOMENT AT EACH CORNER: ${one.setup}`, cornerTable(one, paper), paper),
    ]),
    ...section('BODY', bodyTable(answers, paper), paper),
    ...section('AT THE SEAT', exposureLines(answers, paper), paper),
  ];
}

function cornerTable(answer: RideAnswer, paper: Paper): string[] {
  const figure = (name: string, of: (corner: Corner) => Figure) => ({
    name,
    cells: CORNERS.map((corner) => formatFigure(of(corner), paper)),
  });
  const count = (name: string, of: keyof CornerRide['contacts']) => ({
    name,
    cells: CORNERS.map((corner) =>
      `${answer.run.corners[corner].contacts[of]} times`.replace(/^1 times/, 'once'),
    ),
  });
  return tableLines(
    {
      heads: CORNERS.map((corner) => PLACE_NAMES[corner]),
      rows: [
        figure('Deepest stop crush', (corner) => answer.corners[corner].peakCrush),
        figure('Clearance left', (corner) => answer.corners[corner].clearance),
        figure('Largest stop force', (corner) => answer.corners[corner].peakStopForce),
        figure('Tyre off the ground', (corner) => answer.corners[corner].airborneShare),
        count('Stop touched', 'stop'),
        count('Metal hit', 'metal'),
        count('Strap pulled tight', 'droop'),
        count('Shock on its top', 'shockOpen'),
        count('Shock bottomed', 'shockClosed'),
      ],
    },
    paper,
  );
}

const bodyTable = (answers: readonly RideAnswer[], paper: Paper): string[] => {
  const row = (name: string, of: (answer: RideAnswer) => Figure) => ({
    name,
    cells: answers.map((answer) => formatFigure(of(answer), paper)),
  });
  return tableLines(
    {
      heads: answers.map((answer) => answer.setup),
      rows: [
        row('Largest acceleration above rest', (answer) => answer.body.peakAcceleration),
        row('Root mean square acceleration', (answer) => answer.body.rmsAcceleration),
      ],
    },
    paper,
  );
};
