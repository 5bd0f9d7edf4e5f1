import {
  CORNERS,
  type Corner,
  type CornerRide,
  type Figure,
  formatFigure,
  formatValue,
  PLACE_NAMES,
  type RideAnswer,
  type RideStatus,
  tyreFootText,
} from '@lastinch/core';
import { tableLines, wrap } from './lines.ts';
import type { Paper } from './paper.ts';
import { cautionLines, findingLines, section } from './sections.ts';

const ENDED: Readonly<Record<Exclude<RideStatus, 'finished'>, string>> = {
  'step-limit': 'The calculation ran out of steps: the figures hold only up to',
  'left-validity':
    'The rig left what this model describes (a roll-over, an axle out of reach): the figures hold only up to',
  cancelled: 'Stopped: the figures hold only up to',
};

/**
 * The whole answer of `ride` in lines for a terminal.
 *
 * @param driven – false for a drop, which knows no speed
 * @param ground – the course in a few words
 */
export function ridePage(
  answer: RideAnswer,
  against: RideAnswer | null,
  { driven, ground }: { readonly driven: boolean; readonly ground: string },
  paper: Paper,
): string[] {
  const answers = [answer, ...(against === null ? [] : [against])];
  const speed = driven ? ` at ${formatValue(answer.speed, 'speed', paper)}` : '';
  const title = `${answer.rig}: ${answers.map((one) => one.setup).join(', held against ')}, over ${answer.course}${speed}`;
  return [
    ...wrap(title, paper).map(paper.ink.heading),
    ...wrap(`The course: ${ground}.`, paper),
    ...answers.flatMap((one) => {
      const who = against === null ? 'On this ground' : `${one.setup} on this ground`;
      return wrap(`${who}: ${tyreFootText(one.tyres, paper)}.`, paper);
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
    ...section('CAUTIONS', cautionLines(paper), paper),
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
