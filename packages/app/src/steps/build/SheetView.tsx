import type { Sheet, SheetBlock, SheetColumns, SheetReading, SheetTable } from '@lastinch/core/sheet';
import { READ_HEADS, runsOf } from '@lastinch/paper';
import { columnDescription, columnScene } from '@lastinch/picture';
import { useCallback } from 'react';
import { Picture } from '../../parts/Picture.tsx';
import style from './BuildStep.module.css';

/** The sheet as it will lie on the bench: the same blocks as on paper, in the same order. */
export function SheetView({ sheet }: { readonly sheet: Sheet }) {
  return (
    <article className={style.sheet} aria-label={`Build sheet of ${sheet.setup}`}>
      {sheet.sections.map(({ id, title, blocks }) => (
        <section key={id} aria-labelledby={`sheet-${id}`} className={style.section}>
          <h3 id={`sheet-${id}`} className={style.heading}>
            {title}
          </h3>
          {runsOf(blocks).map((run, k) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a sheet is written once and never reordered
            <Run key={k} run={run} sheet={sheet} id={`sheet-${id}-${k}`} />
          ))}
        </section>
      ))}
    </article>
  );
}

function Run({
  run,
  sheet,
  id,
}: {
  readonly run: readonly SheetBlock[];
  readonly sheet: Sheet;
  readonly id: string;
}) {
  const [block] = run;
  switch (block?.kind) {
    case 'heading':
      return <h4 className={style.small}>{block.text}</h4>;
    case 'say':
      return <p className={style.say}>{block.text}</p>;
    case 'warn':
      return <p className={style.warn}>{block.text}</p>;
    case 'tick':
      return (
        <ul className={style.ticks}>
          {run.map((one) => (one.kind === 'tick' ? <li key={one.text}>{one.text}</li> : null))}
        </ul>
      );
    case 'reading':
      return <Readings readings={run.filter((one) => one.kind === 'reading')} />;
    case 'table':
      return <Table table={block} />;
    case 'columns':
      return <Columns block={block} sheet={sheet} id={id} />;
    default:
      return null;
  }
}

const Readings = ({ readings }: { readonly readings: readonly SheetReading[] }) => (
  <Table
    table={{
      kind: 'table',
      heads: READ_HEADS,
      rows: readings.map(({ what, expected, key }) => [what, expected, '', key]),
    }}
  />
);

function Table({ table: { heads, rows } }: { readonly table: SheetTable }) {
  return (
    <div className={style.wide}>
      <table className={style.table}>
        <thead>
          <tr>
            {heads.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.join('|')}>
              {row.map((cell, k) =>
                k === 0 ? (
                  <th key={heads[k]} scope="row">
                    {cell}
                  </th>
                ) : (
                  <td key={heads[k]}>{cell}</td>
                ),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function Columns({
  block,
  sheet,
  id,
}: {
  readonly block: SheetColumns;
  readonly sheet: Sheet;
  readonly id: string;
}) {
  const { system } = sheet;
  const draw = useCallback(
    (width: number) => columnScene(block.travel, { width, system, against: block.against }),
    [block, system],
  );
  return (
    <Picture
      id={id}
      title={`Travel columns: ${block.against.setup} beside ${block.travel.setup}`}
      description={columnDescription(block.travel, { system, against: block.against })}
      draw={draw}
    />
  );
}
