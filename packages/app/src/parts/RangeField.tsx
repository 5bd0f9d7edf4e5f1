import { useId } from 'react';
import style from './RangeField.module.css';

/** A value under the finger. The browser's own slider: arrow keys, page keys and touch work as everywhere. */
export function RangeField(props: {
  readonly label: string;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly value: number;
  /** The value in words, with its unit: shown, and read out instead of the bare number. */
  readonly valueText: string;
  readonly onChange: (value: number) => void;
}) {
  const id = useId();
  return (
    <div className={style.range}>
      <label className={style.label} htmlFor={id}>
        {props.label}
      </label>
      <output className={style.value} htmlFor={id}>
        {props.valueText}
      </output>
      <input
        id={id}
        type="range"
        className={style.input}
        min={props.min}
        max={props.max}
        step={props.step}
        value={props.value}
        aria-valuetext={props.valueText}
        onChange={(event) => props.onChange(event.target.valueAsNumber)}
      />
    </div>
  );
}
