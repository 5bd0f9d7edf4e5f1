import type { ReactNode } from 'react';
import style from './DataTable.module.css';

export interface DataRow {
  readonly head: string;
  /** Small text under the head. */
  readonly note?: string;
  /** What can be opened under the head. */
  readonly more?: ReactNode;
  readonly cells: readonly ReactNode[];
}

/** Figures in rows, for reading and for a screen reader; scrolls sideways by itself where it does not fit. */
export function DataTable(props: {
  readonly caption: string;
  readonly columns: readonly string[];
  readonly rows: readonly DataRow[];
  /** Cells hold words that may break, not figures that must not. */
  readonly wraps?: boolean;
}) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard.
    <section className={style.scroller} tabIndex={0} aria-label={props.caption}>
      <table className={style.table} data-wraps={props.wraps === true}>
        <caption className={style.caption}>{props.caption}</caption>
        <thead>
          <tr>
            {props.columns.map((column) => (
              <th key={column} scope="col">
                {column}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {props.rows.map((row) => (
            <tr key={`${row.head} ${row.note ?? ''}`}>
              <th scope="row">
                {row.head}
                {row.note === undefined ? null : <span className={style.note}>{row.note}</span>}
                {row.more}
              </th>
              {row.cells.map((cell, index) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: cells have no identity but their column.
                <td key={index}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
