import type { AssumptionRule, Rig, UnitSystem } from '@lastinch/core';
import { useMemo } from 'react';
import frame from '../../design/step.module.css';
import { END_NAME } from '../../parts/place-name.ts';
import { Segments } from '../../parts/Segments.tsx';
import { useStore } from '../../store.ts';
import { useUnits } from '../../use-units.ts';
import type { Workbench } from '../../workbench.ts';
import { AddContact } from './AddContact.tsx';
import { FieldRow } from './FieldRow.tsx';
import { isOpen, statusOf } from './field-status.ts';
import style from './MeasureStep.module.css';
import { type FieldGroup, groupsOf, type MeasurePlace, PLACE_NAME, PLACES } from './places.ts';
import { RigText } from './RigText.tsx';

/** What was measured, what is missing, and what the program took instead. */
export function MeasureStep({ workbench }: { readonly workbench: Workbench }) {
  const place = useStore(workbench.session, (state) => state.place);
  const onlyOpen = useStore(workbench.session, (state) => state.onlyOpen);
  const system = useUnits(workbench);
  const fields = useStore(workbench.document, (state) => state.fields);
  const rules = useStore(workbench.document, (state) => state.rules);
  const rig = useStore(workbench.document, (state) => state.rig);
  const names = useMemo(() => contactNamesOf(rig, place), [rig, place]);
  const groups = groupsOf(fields, place, names)
    .map((group) => (onlyOpen ? openOnly(group) : group))
    .filter((group) => group.fields.length > 0);
  return (
    <div className={style.step}>
      <h2 className={frame.title}>Measure</h2>
      <p className={style.lead}>
        Type what the tape says, with its unit and how sure you are: <kbd>4 1/8 in ± 1/16</kbd>,{' '}
        <kbd>105 mm ± 2</kbd>, <kbd>~ 30 lb</kbd> for a guess. What you leave out is filled with a marked
        assumption.
      </p>
      <div className={style.choices}>
        <Segments
          label="Part of the rig"
          options={PLACES.map((each) => ({ value: each, label: PLACE_NAME[each] }))}
          value={place}
          onChange={(chosen) => workbench.choose({ place: chosen })}
        />
        {place === 'text' ? null : (
          <Segments
            label="Show"
            options={[
              { value: 'all', label: 'All readings' },
              { value: 'open', label: `To measure (${openCount(fields, place)})` },
            ]}
            value={onlyOpen ? 'open' : 'all'}
            onChange={(chosen) => workbench.choose({ onlyOpen: chosen === 'open' })}
          />
        )}
      </div>
      {place === 'text' ? <RigText workbench={workbench} /> : null}
      <div className={style.groups}>
        {groups.map((group) => (
          <Group
            key={group.id}
            group={group}
            place={place}
            workbench={workbench}
            rules={rules}
            system={system}
          />
        ))}
      </div>
      {(place === 'front' || place === 'rear') && !onlyOpen ? (
        <AddContact workbench={workbench} end={place} endName={END_NAME[place]} />
      ) : null}
      {groups.length === 0 && place !== 'text' ? (
        <p className={style.lead}>
          {onlyOpen ? 'Nothing left to measure here.' : 'The rig file holds nothing here yet.'}
        </p>
      ) : null}
    </div>
  );
}

const NO_NAMES: ReadonlyMap<string, string> = new Map();

/** What the owner calls the contacts of an end; the key stands where he gave no name. */
function contactNamesOf(rig: Rig | null, place: MeasurePlace): ReadonlyMap<string, string> {
  if (rig === null || (place !== 'front' && place !== 'rear')) return NO_NAMES;
  return new Map(rig[place].contacts.map(({ id, name }) => [id, name]));
}

const openOnly = (group: FieldGroup): FieldGroup => ({
  ...group,
  absent: false,
  fields: group.fields.filter((field) => isOpen(statusOf(field))),
});

const openCount = (fields: Parameters<typeof groupsOf>[0], place: MeasurePlace): number =>
  groupsOf(fields, place, NO_NAMES).reduce((sum, group) => sum + openOnly(group).fields.length, 0);

function Group(props: {
  readonly group: FieldGroup;
  readonly place: MeasurePlace;
  readonly workbench: Workbench;
  readonly rules: ReadonlyMap<string, AssumptionRule>;
  readonly system: UnitSystem;
}) {
  const { group, workbench, rules, system } = props;
  const rows = (
    <div className={style.fields}>
      {group.fields.map((field) => {
        const key = field.path.join('.');
        return (
          <FieldRow
            key={key}
            workbench={workbench}
            field={field}
            rule={rules.get(key) ?? null}
            system={system}
          />
        );
      })}
    </div>
  );
  if (group.absent)
    return (
      <details className={style.group}>
        <summary className={style.absent}>
          <h3 className={style.heading}>{group.title}</h3>
          <span className={style.about}>None on this rig. Open to add one.</span>
        </summary>
        {rows}
      </details>
    );
  return (
    <section className={style.group} aria-label={group.title}>
      <h3 className={style.heading}>{group.title}</h3>
      <p className={style.about}>{group.about}</p>
      {rows}
    </section>
  );
}

/** Brings a reading under the finger. */
export function focusReading(key: string): void {
  const input = document.querySelector<HTMLInputElement>(`main input[name="${CSS.escape(key)}"]`);
  input?.closest('details')?.setAttribute('open', '');
  input?.focus();
  input?.scrollIntoView({ block: 'center' });
}
