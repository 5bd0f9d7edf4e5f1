import { useId } from 'react';
import style from './Choice.module.css';

export interface ChoiceOption {
  readonly value: string;
  readonly label: string;
}

/** One of a few. The browser's own list: it is the easiest to use on a phone, and with a keyboard. */
export function Choice(props: {
  readonly label: string;
  readonly options: readonly ChoiceOption[];
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly tone?: 'now' | 'proposed' | 'plain';
  readonly hint?: string;
}) {
  const id = useId();
  return (
    <div className={style.choice} data-tone={props.tone ?? 'plain'}>
      <label className={style.label} htmlFor={id}>
        {props.label}
      </label>
      <select
        id={id}
        className={style.select}
        value={props.value}
        aria-describedby={props.hint === undefined ? undefined : `${id}-hint`}
        onChange={(event) => props.onChange(event.target.value)}
      >
        {props.options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
      {props.hint === undefined ? null : (
        <p className={style.hint} id={`${id}-hint`}>
          {props.hint}
        </p>
      )}
    </div>
  );
}
