import { formatFigure, type TravelColumn, type UnitSystem } from '@lastinch/core';
import { DataTable } from '../../parts/DataTable.tsx';
import { inAHundred } from '../../parts/place-name.ts';

const DROOP_NAME: Readonly<Record<TravelColumn['droop'][number]['id'], string>> = {
  shock: 'Shock fully open',
  strap: 'Strap tight',
  spring: 'Spring comes loose',
  hose: 'Brake hose taut',
  shaft: 'Driveshaft at its end',
};

/** What is hit in bump, in the order in which it is hit, and what ends droop. */
export function ContactTable(props: { readonly column: TravelColumn; readonly system: UnitSystem }) {
  const { column, system } = props;
  const say = (figure: TravelColumn['spare']): string => formatFigure(figure, { system });
  return (
    <>
      <DataTable
        caption="Hit in bump, first on top"
        columns={['Contact', 'Travel to it', 'To spare', 'First']}
        rows={column.contacts.map((contact) => ({
          head: contact.name,
          cells: [say(contact.travel), say(contact.spare), inAHundred(contact.firstShare)],
        }))}
      />
      {column.droop.length === 0 ? null : (
        <DataTable
          caption="Ends droop, first on top"
          columns={['Limit', 'Travel to it']}
          rows={column.droop.map((limit) => ({ head: DROOP_NAME[limit.id], cells: [say(limit.travel)] }))}
        />
      )}
    </>
  );
}
