import { type Problem, problemText } from '@lastinch/core';
import type { Filing } from '../workbench.ts';
import { PlainButton } from './PlainButton.tsx';
import style from './StatusLine.module.css';

/** Problems listed before the rest is only counted. */
const SHOWN = 5;

export interface StatusLineProps {
  readonly problems: readonly Problem[];
  readonly refused: readonly Problem[];
  /** The figures on screen are those of the last rig that could be read whole. */
  readonly lastGoodInView: boolean;
  readonly notice: Filing['notice'];
  readonly onDismiss: () => void;
  readonly onTakeFromDisk: () => void;
  readonly onSaveElsewhere: () => void;
}

/** Trouble, and good news, said in one place with the work still on screen; never in a window that must be closed. */
export function StatusLine(props: StatusLineProps) {
  const problems = props.refused.length > 0 ? props.refused : props.problems;
  return (
    <div className={style.line} role="status">
      {props.notice === null ? null : (
        <div className={style.notice} data-kind={props.notice.kind}>
          <p>{props.notice.text}</p>
          <div className={style.actions}>
            {props.notice.kind === 'changed-on-disk' ? (
              <>
                <PlainButton onPress={props.onTakeFromDisk}>Take the one on disk</PlainButton>
                <PlainButton onPress={props.onSaveElsewhere}>Save mine as a copy…</PlainButton>
              </>
            ) : null}
            <PlainButton weight="quiet" onPress={props.onDismiss}>
              Close
            </PlainButton>
          </div>
        </div>
      )}
      {problems.length === 0 ? null : (
        <div className={style.notice} data-kind="problems">
          <p>
            {props.lastGoodInView
              ? 'Some of this cannot be read yet. Verdicts and drawings show the last rig that could:'
              : 'This rig file cannot be read yet:'}
          </p>
          <ul>
            {problems.slice(0, SHOWN).map((problem) => (
              <li key={`${problem.where.line}.${problem.where.key}.${problem.code}`}>
                {problemText(problem)}
              </li>
            ))}
          </ul>
          {problems.length > SHOWN ? <p>and {problems.length - SHOWN} more.</p> : null}
        </div>
      )}
    </div>
  );
}
