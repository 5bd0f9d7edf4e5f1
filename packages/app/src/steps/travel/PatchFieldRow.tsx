import { type EndPatch, type Problem, problemText } from '@lastinch/core';
import { Choice } from '../../parts/Choice.tsx';
import { TypedField } from '../../parts/TypedField.tsx';
import { useStore } from '../../store.ts';
import type { Workbench } from '../../workbench.ts';
import type { PatchField } from './patch-fields.ts';

const AS_FITTED = '';

/** One change of a proposal: a part chosen from the shelf, or a length typed. Empty means: as it is. */
export function PatchFieldRow(props: {
  readonly workbench: Workbench;
  readonly field: PatchField;
  /** What the last good rig says. */
  readonly patch: EndPatch;
  readonly path: readonly string[];
  readonly place: string;
}) {
  const { workbench, field, path, place } = props;
  const key = path.join('.');
  const state = useStore(workbench.document, ({ fields }) =>
    fields.find((each) => each.path.join('.') === key),
  );
  const label = `${place}: ${field.label.toLowerCase()}`;
  const put = (text: string, gesture: string | null): void =>
    workbench.edit([{ path, text: text.trim() === '' ? null : text.trim() }], { label, gesture });
  if (field.kind === 'part') {
    const chosen = props.patch[field.key];
    return (
      <Choice
        label={field.label}
        value={typeof chosen === 'string' ? chosen : AS_FITTED}
        options={[
          { value: AS_FITTED, label: 'as it is' },
          ...field.choices.map((choice) => ({ value: choice, label: choice })),
        ]}
        onChange={(choice) => put(choice, null)}
      />
    );
  }
  return (
    <TypedField
      label={field.label}
      text={state?.typed ?? ''}
      placeholder="as it is"
      hint={field.about}
      error={errorOf(state?.problems ?? [])}
      name={key}
      onType={(text) => put(text, key)}
      onLeave={workbench.leaveField}
    />
  );
}

const errorOf = (problems: readonly Problem[]): string | null =>
  problems.length === 0 ? null : problems.map((problem) => problemText({ ...problem, where: {} })).join(' ');
