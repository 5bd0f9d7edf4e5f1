import {
  type CheckResult,
  CORNERS,
  type Corner,
  formatFigure,
  type TravelColumn,
  type UnitSystem,
} from '@lastinch/core';
import { columnShape, type Item, type Scene, svgOf } from '@lastinch/picture';
import { useMemo } from 'react';
import { LANES, type Lane } from '../answers.ts';
import style from './MiniColumns.module.css';
import { CORNER_NAME, LANE_NAME, VERDICT_WORD } from './place-name.ts';
import { SeverityMark } from './SeverityMark.tsx';

const WIDTH = 64;
const HEIGHT = 132;
const BAR = 24;
const METAL = 6;

const SEVERITY = { pass: 'fine', 'not-proven': 'unproven', fail: 'over' } as const;

/** The four travel columns of both setups, small enough to stay in view while readings are typed. */
export function MiniColumns(props: {
  readonly checks: Readonly<Record<Lane, CheckResult | null>>;
  readonly system: UnitSystem;
}) {
  const { checks, system } = props;
  const most = Math.max(
    0.01,
    ...LANES.flatMap((lane) => CORNERS.map((corner) => topOf(checks[lane]?.travel.corners[corner]))),
  );
  return (
    <ul className={style.columns} aria-label="Travel columns, small">
      {CORNERS.map((corner) => (
        <li key={corner} className={style.corner}>
          <Bars corner={corner} checks={checks} most={most} />
          <p className={style.name}>{CORNER_NAME[corner]}</p>
          {LANES.map((lane) => {
            const column = checks[lane]?.travel.corners[corner];
            return column === undefined ? null : (
              <p key={lane} className={style.spare} data-lane={lane}>
                <span className={style.hidden}>
                  {LANE_NAME[lane]}: {VERDICT_WORD[column.verdict]}, to spare{' '}
                </span>
                <SeverityMark severity={SEVERITY[column.verdict]} withWord={false} />
                {formatFigure({ ...column.spare, tolerance: null }, { system }).replace(/ ± unknown$/, '')}
              </p>
            );
          })}
        </li>
      ))}
    </ul>
  );
}

function Bars(props: {
  readonly corner: Corner;
  readonly checks: Readonly<Record<Lane, CheckResult | null>>;
  readonly most: number;
}) {
  const { corner, checks, most } = props;
  const svg = useMemo(() => {
    const unit = most / (HEIGHT - METAL);
    const items: Item[] = LANES.flatMap((lane, index) => {
      const column = checks[lane]?.travel.corners[corner];
      return column === undefined
        ? []
        : barOf(column, (6 + index * (BAR + 4)) * unit, BAR * unit, METAL * unit);
    });
    const scene: Scene = {
      bounds: { left: 0, right: WIDTH * unit, bottom: 0, top: HEIGHT * unit },
      items,
      layoutWidth: WIDTH,
    };
    return svgOf(scene, {
      title: `Travel column, ${corner}`,
      idPrefix: `mini-${corner}`,
      style: false,
      paper: false,
    });
  }, [corner, checks, most]);
  // biome-ignore lint/security/noDangerouslySetInnerHtml: made by our own picture package, which escapes all text.
  return <div aria-hidden="true" className={style.bars} dangerouslySetInnerHTML={{ __html: svg }} />;
}

const topOf = (column: TravelColumn | undefined): number =>
  column === undefined ? 0 : Math.max(column.hardTravel.value, column.freeBump.value + column.crush.value);

/** From ride height up to metal: the parts of one column. */
function barOf(column: TravelColumn, x: number, width: number, metal: number): readonly Item[] {
  const { parts, overlap } = columnShape(column);
  const bump = parts.filter(({ id }) => id !== 'droop');
  return [
    ...bump.map(
      ({ id, from, to }): Item => ({
        kind: 'rect',
        role: id,
        x,
        y: Math.max(0, from),
        width,
        height: to - Math.max(0, from),
      }),
    ),
    { kind: 'rect', role: 'metal', x, y: column.hardTravel.value, width, height: metal },
    ...(overlap === null
      ? []
      : [
          {
            kind: 'rect',
            role: 'overlap',
            x,
            y: overlap.from,
            width,
            height: overlap.to - overlap.from,
          } as const,
        ]),
  ];
}
