import { readingName, type TravelColumn } from '@lastinch/core';
import { LANES } from '../../answers.ts';
import panel from '../../design/panel.module.css';
import frame from '../../design/step.module.css';
import { PairCell } from '../../parts/PairCell.tsx';
import { inAHundred } from '../../parts/place-name.ts';
import style from './BlameList.module.css';
import type { ColumnPair } from './ContactTable.tsx';

/** Readings below this share do not repay the walk to the rig. */
const WORTH_SHOWING = 0.02;

/** How likely it is to come up short, and which reading to take again: what the uncertainty of the spare comes from. */
export function BlameList(props: {
  readonly columns: ColumnPair;
  readonly onReading: (key: string) => void;
}) {
  const { columns, onReading } = props;
  const shareOf = (column: TravelColumn | null, key: string): number =>
    column?.blame.find((each) => each.key === key)?.share ?? 0;
  const most = (key: string): number => Math.max(...LANES.map((lane) => shareOf(columns[lane], key)));
  const keys = [...new Set(LANES.flatMap((lane) => columns[lane]?.blame.map(({ key }) => key) ?? []))]
    .filter((key) => most(key) >= WORTH_SHOWING)
    .sort((a, b) => most(b) - most(a));
  const chance = (of: keyof TravelColumn['probability']) => (
    <PairCell
      values={{
        now: columns.now && inAHundred(columns.now.probability[of]),
        proposed: columns.proposed && inAHundred(columns.proposed.probability[of]),
      }}
    />
  );
  return (
    <div className={panel.panel}>
      <dl className={style.chances}>
        <div className={style.chance}>
          <dt>Chance that less is left than must stay free</dt>
          <dd>{chance('spareBelowZero')}</dd>
        </div>
        <div className={style.chance}>
          <dt>Chance that metal is reached at full crush</dt>
          <dd>{chance('metal')}</dd>
        </div>
      </dl>
      <h4 className={style.title}>Which reading to take again</h4>
      {keys.length === 0 ? <p>None stands out.</p> : null}
      <ol className={style.list}>
        {keys.map((key) => (
          <li key={key} className={style.row}>
            <button type="button" className={style.name} onClick={() => onReading(key)}>
              {readingName(key)}
            </button>
            <span className={style.bars}>
              {LANES.map((lane) =>
                columns[lane] === null ? null : (
                  <meter
                    key={lane}
                    className={style.meter}
                    data-lane={lane}
                    min={0}
                    max={1}
                    value={shareOf(columns[lane], key)}
                    aria-hidden="true"
                  />
                ),
              )}
            </span>
            <PairCell
              values={{
                now: columns.now && percent(shareOf(columns.now, key)),
                proposed: columns.proposed && percent(shareOf(columns.proposed, key)),
              }}
            />
          </li>
        ))}
      </ol>
      <p className={frame.about}>Share of the uncertainty of the spare that each reading is to blame for.</p>
    </div>
  );
}

const percent = (share: number): string => `${Math.round(100 * share)} %`;
