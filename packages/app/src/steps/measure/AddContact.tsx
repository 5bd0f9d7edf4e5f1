import type { End } from '@lastinch/core';
import { useId, useState } from 'react';
import { PlainButton } from '../../parts/PlainButton.tsx';
import type { Workbench } from '../../workbench.ts';
import { keyOf } from './contact-key.ts';
import style from './MeasureStep.module.css';

/** Another place where something may hit. The first contact is the least of a list, so the list must be long enough. */
export function AddContact(props: {
  readonly workbench: Workbench;
  readonly end: End;
  readonly endName: string;
}) {
  const { workbench, end, endName } = props;
  const [name, setName] = useState('');
  const id = useId();
  const key = keyOf(name);
  const add = (): void => {
    if (key === '') return;
    workbench.edit([{ path: [end, 'contacts', key, 'name'], text: name.trim() }], {
      label: `${endName}: contact ${key}`,
      gesture: null,
    });
    setName('');
  };
  return (
    <form
      className={style.add}
      onSubmit={(event) => {
        event.preventDefault();
        add();
      }}
    >
      <label htmlFor={id} className={style.addLabel}>
        Another place that may hit at the {endName.toLowerCase()}
      </label>
      <input
        id={id}
        className={style.addInput}
        value={name}
        placeholder="tie rod to sump"
        autoComplete="off"
        onChange={(event) => setName(event.target.value)}
      />
      <PlainButton type="submit" isDisabled={key === ''}>
        Add this contact
      </PlainButton>
    </form>
  );
}
