import { readingName, type TravelColumn } from '@lastinch/core';
import { inAHundred } from '../../parts/place-name.ts';
import style from './BlameList.module.css';

/** Readings below this share do not repay the walk to the rig. */
const WORTH_SHOWING = 0.02;

/** Which reading to take again: what the uncertainty of the spare comes from. */
export function BlameList(props: {
  readonly column: TravelColumn;
  readonly onReading: (key: string) => void;
}) {
  const blamed = props.column.blame.filter(({ share }) => share >= WORTH_SHOWING);
  return (
    <div className={style.blame}>
      <p>
        Likely to come up short: <strong>{inAHundred(props.column.probability.spareBelowZero)}</strong>.
        Likely to reach metal at full crush: <strong>{inAHundred(props.column.probability.metal)}</strong>.
      </p>
      <h5 className={style.title}>Which reading to take again</h5>
      {blamed.length === 0 ? <p>None stands out.</p> : null}
      <ol className={style.list}>
        {blamed.map(({ key, share }) => (
          <li key={key} className={style.row}>
            <button type="button" className={style.name} onClick={() => props.onReading(key)}>
              {readingName(key)}
            </button>
            <meter
              className={style.meter}
              min={0}
              max={1}
              value={share}
              aria-label={`Share of ${readingName(key)}`}
            />
            <span className={style.share}>{Math.round(100 * share)} %</span>
          </li>
        ))}
      </ol>
      <p className={style.about}>Share of the uncertainty of the spare that each reading is to blame for.</p>
    </div>
  );
}
