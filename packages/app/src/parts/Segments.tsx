import { Label, Radio, RadioGroup } from 'react-aria-components';
import style from './Segments.module.css';

/** One of a few that are all in view. Arrow keys move the choice. */
export function Segments<Value extends string>(props: {
  readonly label: string;
  readonly options: readonly { readonly value: Value; readonly label: string }[];
  readonly value: Value;
  readonly onChange: (value: Value) => void;
}) {
  return (
    <RadioGroup
      className={style.group}
      orientation="horizontal"
      value={props.value}
      onChange={(value) => props.onChange(value as Value)}
    >
      <Label className={style.label}>{props.label}</Label>
      <div className={style.row}>
        {props.options.map((option) => (
          <Radio key={option.value} value={option.value} className={style.segment}>
            {option.label}
          </Radio>
        ))}
      </div>
    </RadioGroup>
  );
}
