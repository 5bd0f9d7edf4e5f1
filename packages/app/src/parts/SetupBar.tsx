import type { Corner, Verdict } from '@lastinch/core';
import { LANES, type Lane } from '../answers.ts';
import { Choice } from './Choice.tsx';
import { CORNER_NAME, LANE_NAME, setupLabel, VERDICT_WORD } from './place-name.ts';
import style from './SetupBar.module.css';
import { SeverityMark } from './SeverityMark.tsx';

export interface LaneSummary {
  readonly setupId: string;
  /** Worst verdict of the four corners, and where it stands. Null when there is no answer. */
  readonly worst: { readonly verdict: Verdict; readonly corners: readonly Corner[] } | null;
}

export interface SetupBarProps {
  readonly setups: readonly string[];
  readonly lanes: Readonly<Record<Lane, LaneSummary>>;
  readonly onChoose: (lane: Lane, setupId: string) => void;
}

const SEVERITY = { pass: 'fine', 'not-proven': 'unproven', fail: 'over' } as const;

/** The two setups that every step compares, with how each stands. Always in view. */
export function SetupBar(props: SetupBarProps) {
  const options = props.setups.map((id) => ({ value: id, label: setupLabel(id) }));
  return (
    <section className={style.bar} aria-label="Setups compared">
      {LANES.map((lane) => {
        const { setupId, worst } = props.lanes[lane];
        return (
          <div key={lane} className={style.lane} data-lane={lane}>
            <Choice
              label={LANE_NAME[lane]}
              tone={lane}
              options={options}
              value={setupId}
              onChange={(id) => props.onChoose(lane, id)}
            />
            <p className={style.verdict}>
              {worst === null ? (
                <span className={style.unknown}>No verdict</span>
              ) : (
                <>
                  <span className={style.word} data-severity={SEVERITY[worst.verdict]}>
                    <SeverityMark severity={SEVERITY[worst.verdict]} withWord={false} />
                    {VERDICT_WORD[worst.verdict]}
                  </span>
                  <span className={style.where}>{whereOf(worst)}</span>
                </>
              )}
            </p>
          </div>
        );
      })}
    </section>
  );
}

function whereOf({ corners }: { readonly corners: readonly Corner[] }): string {
  if (corners.length === 4) return 'all four corners';
  if (corners.length === 2 && corners.every((corner) => corner.startsWith('front')))
    return 'front, both sides';
  if (corners.length === 2 && corners.every((corner) => corner.startsWith('rear'))) return 'rear, both sides';
  return corners.map((corner) => CORNER_NAME[corner].toLowerCase()).join(', ');
}
