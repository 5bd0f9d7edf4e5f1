import { LANES, type Lane } from '../answers.ts';
import style from './PairCell.module.css';
import { LANE_NAME } from './place-name.ts';

/** One figure of both setups, one over the other: solid bar now, double bar proposed. */
export function PairCell(props: { readonly values: Readonly<Record<Lane, string | null>> }) {
  return (
    <span className={style.pair}>
      {LANES.map((lane) =>
        props.values[lane] === null ? null : (
          <span key={lane} className={style.value} data-lane={lane}>
            <span className={style.hidden}>{LANE_NAME[lane]}: </span>
            {props.values[lane]}
          </span>
        ),
      )}
    </span>
  );
}

/** Which bar is which setup. Stands over every table of pairs. */
export function PairKey(props: { readonly setups: Readonly<Record<Lane, string | null>> }) {
  return (
    <p className={style.key}>
      {LANES.map((lane) =>
        props.setups[lane] === null ? null : (
          <span key={lane} className={style.value} data-lane={lane}>
            {LANE_NAME[lane]}: {props.setups[lane]}
          </span>
        ),
      )}
    </p>
  );
}
