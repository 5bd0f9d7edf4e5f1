import { type ClipboardEvent, type KeyboardEvent, useState } from 'react';
import style from './ReadingTable.module.css';
import { cellsOf, linesOf, withCell, withLines } from './readings.ts';

/** More than this nobody types, and nobody wants to scroll past. */
const MOST_ROWS = 60;
const EMPTY_ROWS = 3;

/** Pairs of readings in their order; there is always room for the next. */
export function ReadingTable(props: {
  readonly caption: string;
  readonly columns: readonly [string, string];
  /** Said in the first row while nothing stands there. */
  readonly example: readonly [string, string];
  readonly text: string;
  /** Lines that cannot be read, counted from one. */
  readonly wrong: ReadonlySet<number>;
  readonly onChange: (text: string) => void;
}) {
  const { columns, example, text, wrong, onChange } = props;
  // A cell under the keyboard shows what is typed, spaces and all.
  const [draft, setDraft] = useState<{ readonly at: string; readonly typed: string } | null>(null);
  const lines = linesOf(text);
  if (lines.length > MOST_ROWS) return <p>{lines.length} lines, from the file.</p>;
  const rows = Math.max(lines.length + 1, EMPTY_ROWS);
  return (
    <table className={style.table}>
      <caption className={style.caption}>{props.caption}</caption>
      <thead>
        <tr>
          <th scope="col" className={style.number}>
            No.
          </th>
          {columns.map((column) => (
            <th key={column} scope="col">
              {column}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {Array.from({ length: rows }, (_, row) => {
          const cells = cellsOf(lines[row] ?? '');
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: a reading is its place in the order.
            <tr key={row} data-wrong={wrong.has(row + 1)}>
              <th scope="row" className={style.number}>
                {row + 1}
              </th>
              {([0, 1] as const).map((column) => {
                const at = `${row} ${column}`;
                return (
                  <td key={column}>
                    <input
                      type="text"
                      className={style.cell}
                      aria-label={`${columns[column]}, ${row + 1}`}
                      aria-invalid={wrong.has(row + 1)}
                      value={draft?.at === at ? draft.typed : cells[column]}
                      placeholder={row === 0 && text === '' ? example[column] : undefined}
                      autoComplete="off"
                      spellCheck={false}
                      enterKeyHint="next"
                      onChange={(event) => {
                        setDraft({ at, typed: event.target.value });
                        onChange(withCell(text, row, column, event.target.value));
                      }}
                      onBlur={() => setDraft(null)}
                      onKeyDown={toNextCell}
                      onPaste={(event: ClipboardEvent) => {
                        const pasted = event.clipboardData.getData('text');
                        if (!pasted.includes('\n')) return;
                        event.preventDefault();
                        onChange(withLines(text, row, pasted));
                      }}
                    />
                  </td>
                );
              })}
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

/** Enter goes on to the next cell, as on paper. */
function toNextCell(event: KeyboardEvent<HTMLInputElement>): void {
  if (event.key !== 'Enter') return;
  event.preventDefault();
  const cells = [...(event.currentTarget.closest('table')?.querySelectorAll('input') ?? [])];
  cells[cells.indexOf(event.currentTarget) + 1]?.focus();
}
