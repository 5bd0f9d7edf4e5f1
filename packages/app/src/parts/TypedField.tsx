import { type ReactNode, useEffect, useRef, useState } from 'react';
import { FieldError, Input, Label, Text, TextField } from 'react-aria-components';
import style from './TypedField.module.css';

export interface TypedFieldProps {
  readonly label: string;
  /** How the reading stands, in a word beside the label. */
  readonly tag?: string | null;
  /** What stands in the document. Shown as it is, whatever it says. */
  readonly text: string;
  readonly placeholder?: string;
  /** Why the text cannot be used; the text stays. */
  readonly error: string | null;
  /** What was understood, or taken instead. */
  readonly hint?: ReactNode;
  readonly name?: string;
  /** Called at every keystroke. */
  readonly onType: (text: string) => void;
  /** Called when the field is left: what follows is another gesture. */
  readonly onLeave: () => void;
}

/**
 * A dimension as somebody types it: `4 1/8 in ± 1/16`. Never reformats, never drops what it does not understand.
 * While somebody types it shows a draft, because the document trims spaces at the ends and may refuse an edit;
 * a change of the document that did not come from here, such as undo, replaces the draft.
 */
export function TypedField(props: TypedFieldProps) {
  const [draft, setDraft] = useState<string | null>(null);
  const latestDraft = useRef(draft);
  latestDraft.current = draft;
  useEffect(() => {
    if (latestDraft.current !== null && latestDraft.current.trim() !== props.text.trim()) setDraft(null);
  }, [props.text]);
  return (
    <TextField
      className={style.field}
      isInvalid={props.error !== null}
      value={draft ?? props.text}
      onChange={(text) => {
        setDraft(text);
        props.onType(text);
      }}
      onFocusChange={(now) => {
        if (now) return;
        if (draft?.trim() === props.text.trim()) setDraft(null);
        props.onLeave();
      }}
    >
      <Label className={style.label}>
        {props.label}
        {props.tag === undefined || props.tag === null ? null : (
          <span className={style.tag}>{props.tag}</span>
        )}
      </Label>
      <Input
        className={style.input}
        name={props.name}
        placeholder={props.placeholder}
        autoComplete="off"
        autoCapitalize="off"
        spellCheck={false}
        enterKeyHint="next"
        onKeyDown={toNextField}
      />
      {props.error === null && props.hint !== undefined ? (
        <Text slot="description" className={style.hint} elementType="div">
          {props.hint}
        </Text>
      ) : null}
      <FieldError className={style.error}>{props.error}</FieldError>
    </TextField>
  );
}

/** Enter goes on to the next reading, as on the paper list that it replaces. */
function toNextField(event: React.KeyboardEvent<HTMLInputElement>): void {
  if (event.key !== 'Enter') return;
  event.preventDefault();
  const inputs = [...document.querySelectorAll<HTMLInputElement>('main input[type="text"]')];
  inputs[inputs.indexOf(event.currentTarget) + 1]?.focus();
}
