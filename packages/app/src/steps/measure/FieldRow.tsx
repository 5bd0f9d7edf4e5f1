import {
  type AssumptionRule,
  assumptionText,
  CORNERS,
  formatFigure,
  problemText,
  type Reading,
  readingName,
  type UnitSystem,
} from '@lastinch/core';
import type { FieldState } from '@lastinch/core/rigfile';
import { memo } from 'react';
import { LANES } from '../../answers.ts';
import { TypedField } from '../../parts/TypedField.tsx';
import { useStore } from '../../store.ts';
import type { Workbench } from '../../workbench.ts';
import style from './FieldRow.module.css';
import { type FieldStatus, STATUS_WORD, statusOf } from './field-status.ts';
import { labelOf } from './places.ts';
import { sidesEdits, sidesOf } from './sides.ts';

export interface FieldRowProps {
  readonly workbench: Workbench;
  readonly field: FieldState;
  /** The rule by which the program filled the value or the tolerance, if it did. */
  readonly rule: AssumptionRule | null;
  readonly system: UnitSystem;
}

/** One reading: its text as typed, what was understood or taken instead, and how to take it better. */
export const FieldRow = memo(function FieldRow(props: FieldRowProps) {
  const { workbench, field, rule, system } = props;
  const key = field.path.join('.');
  const status = statusOf(field);
  const name = readingName(key);
  const word = STATUS_WORD[status];
  const sides = sidesOf(field);
  return (
    <div className={style.row} data-status={status}>
      <TypedField
        label={labelOf(field.path)}
        tag={word}
        name={key}
        text={field.typed ?? ''}
        placeholder={status === 'assumed' ? 'not measured' : status === 'needed' ? 'needed' : ''}
        error={
          status === 'problem'
            ? field.problems.map((problem) => problemText({ ...problem, where: {} })).join(' ')
            : null
        }
        hint={hintOf(field, status, system)}
        onType={(text) =>
          workbench.edit([{ path: field.path, text: text.trim() === '' ? null : text.trim() }], {
            label: name,
            gesture: key,
          })
        }
        onLeave={workbench.leaveField}
      />
      <details className={style.more}>
        <summary>
          About <span className={style.hidden}>{name}</span>
        </summary>
        <div className={style.inside}>
          <p>{field.about}.</p>
          {rule === null ? null : <RuleWords rule={rule} reading={field.reading} fieldKey={key} />}
          {field.path[0] === 'courses' ? null : <WhyItMatters workbench={workbench} fieldKey={key} />}
          {sides === null ? null : (
            <button
              type="button"
              className={style.sides}
              onClick={() =>
                workbench.edit(sidesEdits(field, sides), { label: `${name}: sides`, gesture: null })
              }
            >
              {sides === 'both' ? 'Left and right differ' : 'One reading for both sides'}
            </button>
          )}
        </div>
      </details>
    </div>
  );
});

/** What the program goes by: in the unit system that is shown, or in the other one when that is what was typed. */
function hintOf(field: FieldState, status: FieldStatus, system: UnitSystem): string | undefined {
  const { reading, typed } = field;
  if (reading === null) return undefined;
  const { value, plus, minus, dimension } = reading;
  const figure = { value, dimension, tolerance: Math.max(plus, minus) };
  const shown = formatFigure(figure, { system });
  if (status === 'assumed') return `taken: ${shown}`;
  if (shown !== typed?.trim()) return `= ${shown}`;
  return dimension === 'ratio' ? undefined : `= ${formatFigure(figure, { system: OTHER[system] })}`;
}

const OTHER: Readonly<Record<UnitSystem, UnitSystem>> = { shop: 'metric', metric: 'shop' };

function RuleWords(props: {
  readonly rule: AssumptionRule;
  readonly reading: Reading | null;
  readonly fieldKey: string;
}) {
  const what = props.reading?.origin === 'assumed' ? 'value' : 'tolerance';
  const words = assumptionText({ key: props.fieldKey, what, rule: props.rule });
  return (
    <>
      <p>
        <strong>Taken instead:</strong> {words.what}
      </p>
      <p>
        <strong>To measure it:</strong> {words.howToMeasure}
      </p>
    </>
  );
}

/** How much of the doubt about the spare is due to this reading, in the worst corner of either setup. */
function WhyItMatters({ workbench, fieldKey }: { readonly workbench: Workbench; readonly fieldKey: string }) {
  const percent = useStore(workbench.answers, (answers) => {
    const shares = LANES.flatMap((lane) =>
      CORNERS.map(
        (corner) =>
          answers[lane].check?.travel.corners[corner].blame.find(({ key }) => key === fieldKey)?.share ?? 0,
      ),
    );
    return Math.round(100 * Math.max(0, ...shares));
  });
  return (
    <p>
      <strong>Why it matters:</strong>{' '}
      {percent < 1
        ? 'the travel verdicts hardly depend on how well it is known.'
        : `up to ${percent} % of the uncertainty of a travel verdict comes from it.`}
    </p>
  );
}
