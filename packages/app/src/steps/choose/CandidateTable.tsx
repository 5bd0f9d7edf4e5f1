import { type ChooseAnswer, wantCell, wantHead } from '@lastinch/core/choose';
import { tie } from '../../parts/tie.ts';
import style from './CandidateTable.module.css';
import type { Shown } from './shown.ts';
import { candidateName, type WantWords } from './wants.ts';

/** Candidates with all that is wanted. A press on a name looks at it. */
export function CandidateTable(props: {
  readonly answer: ChooseAnswer;
  readonly shown: readonly Shown[];
  readonly chosen: number | null;
  readonly words: WantWords;
  readonly caption?: string;
  readonly onChoose?: (index: number) => void;
}) {
  const { answer, shown, chosen, words, caption = 'Candidates that stand', onChoose } = props;
  const { system } = words;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard.
    <section className={style.scroller} tabIndex={0} aria-label={caption}>
      <table className={style.table}>
        <caption className={style.caption}>{caption}</caption>
        <thead>
          <tr>
            <th scope="col">What is changed</th>
            {answer.wants.map((want) => (
              <th key={want} scope="col">
                {wantHead(want, words)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {shown.map(({ mark, of, isMember, isIn }) => {
            const name = (
              <>
                {mark === '' ? null : <b className={style.mark}>{mark}</b>}
                <span>{candidateName(of, system)}</span>
                {isMember || onChoose !== undefined ? null : <span className={style.note}>beaten</span>}
              </>
            );
            return (
              <tr key={`${mark} ${of.index}`} data-chosen={of.index === chosen} data-in={isIn}>
                <th scope="row">
                  {onChoose === undefined ? (
                    <span className={style.name}>{name}</span>
                  ) : (
                    <button
                      type="button"
                      className={style.name}
                      aria-pressed={of.index === chosen}
                      onClick={() => onChoose(of.index)}
                    >
                      {name}
                    </button>
                  )}
                </th>
                {answer.wants.map((want) => {
                  const spread = of.wants[want];
                  return <td key={want}>{spread === undefined ? '' : tie(wantCell(want, spread, words))}</td>;
                })}
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}
