import { TypedField } from '../../parts/TypedField.tsx';
import { type Forms, useTyped } from './forms.ts';

/** One field of a form of this step. What is typed stays for the session, whatever is looked at meanwhile. */
export function Field(props: {
  readonly forms: Forms;
  readonly name: string;
  readonly label: string;
  readonly placeholder?: string;
  readonly usual?: string;
  readonly hint?: string;
  readonly error: string | null;
}) {
  const [text, put] = useTyped(props.forms, props.name, props.usual);
  return (
    <TypedField
      label={props.label}
      name={props.name}
      text={text}
      placeholder={props.placeholder}
      hint={props.hint}
      error={props.error}
      onType={put}
      onLeave={() => undefined}
    />
  );
}
