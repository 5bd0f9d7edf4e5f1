import { formatFigure, type TravelColumn, type UnitSystem } from '@lastinch/core';
import { LANES, type Lane } from '../../answers.ts';
import { DataTable } from '../../parts/DataTable.tsx';
import { PairCell } from '../../parts/PairCell.tsx';
import { inAHundred } from '../../parts/place-name.ts';

/** One corner in both setups; null where a setup has no answer. */
export type ColumnPair = Readonly<Record<Lane, TravelColumn | null>>;

const DROOP_NAME: Readonly<Record<TravelColumn['droop'][number]['id'], string>> = {
  shock: 'Shock fully open',
  strap: 'Strap tight',
  spring: 'Spring comes loose',
  hose: 'Brake hose taut',
  shaft: 'Driveshaft at its end',
};

/** What is hit in bump, in the order in which it is hit on the rig now, and what ends droop. */
export function ContactTable(props: { readonly columns: ColumnPair; readonly system: UnitSystem }) {
  const { columns, system } = props;
  const say = (figure: TravelColumn['spare']): string => formatFigure(figure, { system });
  const pair = (of: (column: TravelColumn) => string | undefined) => (
    <PairCell values={{ now: textOf(columns.now, of), proposed: textOf(columns.proposed, of) }} />
  );
  return (
    <>
      <DataTable
        caption="Hit in bump, first on top"
        columns={['Contact', 'Travel to it', 'To spare', 'Hit first']}
        rows={idsOf(columns, 'contacts').map((id) => {
          const contact = (column: TravelColumn) => column.contacts.find((each) => each.id === id);
          const found = LANES.map((lane) => columns[lane] && contact(columns[lane])).find(Boolean);
          return {
            head: found?.name ?? id,
            cells: [
              pair((column) => optional(contact(column)?.travel, say)),
              pair((column) => optional(contact(column)?.spare, say)),
              pair((column) => optional(contact(column)?.firstShare, inAHundred)),
            ],
          };
        })}
      />
      <DataTable
        caption="Ends droop, first on top"
        columns={['Limit', 'Travel to it']}
        rows={idsOf(columns, 'droop').map((id) => ({
          head: DROOP_NAME[id as keyof typeof DROOP_NAME],
          cells: [pair((column) => optional(column.droop.find((each) => each.id === id)?.travel, say))],
        }))}
      />
    </>
  );
}

const textOf = (
  column: TravelColumn | null,
  of: (column: TravelColumn) => string | undefined,
): string | null => (column === null ? null : (of(column) ?? 'not there'));
const optional = <T,>(value: T | undefined, say: (value: T) => string): string | undefined =>
  value === undefined ? undefined : say(value);

/** Ids of either setup, in the order of the first that has them. */
const idsOf = (columns: ColumnPair, list: 'contacts' | 'droop'): readonly string[] => [
  ...new Set(LANES.flatMap((lane) => columns[lane]?.[list].map(({ id }) => id) ?? [])),
];
