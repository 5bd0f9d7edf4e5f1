import type { Rig } from '@lastinch/core';
import { isShelfName, shelfEdits } from '@lastinch/core/rigfile';
import { useState } from 'react';
import panel from '../../design/panel.module.css';
import { PlainButton } from '../../parts/PlainButton.tsx';
import type { Workbench } from '../../workbench.ts';
import { Field } from './Field.tsx';
import { type Forms, useTyped } from './forms.ts';
import style from './StopStep.module.css';

/** Puts a stop under `parts.stops` of the rig file, from where it can be driven and proposed. Undo takes it back. */
export function ToShelf(props: {
  readonly workbench: Workbench;
  readonly forms: Forms;
  readonly rig: Rig | null;
  /** Name of the field that holds its name. */
  readonly field: string;
  readonly usual: string;
  /** Text of the stop under its name for the rig file. */
  readonly fragmentOf: (name: string) => string;
  /** Where it comes from, for its notes. */
  readonly notes: string;
  readonly disabled: boolean;
}) {
  const { workbench, forms, rig, field, usual, fragmentOf, notes, disabled } = props;
  const [name] = useTyped(forms, field, usual);
  const [put, setPut] = useState<string | null>(null);
  const isTaken = rig !== null && Object.hasOwn(rig.shelf.stops, name);
  // What was just put there is no mistake.
  const error = !isShelfName(name)
    ? 'Letters, digits and dashes, a letter first, for example soft-60.'
    : isTaken && put !== name
      ? 'A stop of this name is in the rig file already.'
      : null;
  return (
    <div className={style.ask}>
      <Field forms={forms} name={field} usual={usual} label="Name in the rig file" error={error} />
      <PlainButton
        weight="strong"
        isDisabled={disabled || rig === null || error !== null || isTaken}
        onPress={() => {
          workbench.edit(shelfEdits(fragmentOf(name), notes), { label: `stop ${name}`, gesture: null });
          setPut(name);
        }}
      >
        Put it into the rig file
      </PlainButton>
      <p className={panel.state} role="status">
        {isTaken && put === name
          ? `${name} stands under parts.stops. Find the band again to see what it does.`
          : ''}
      </p>
    </div>
  );
}
