import type { UnitSystem } from '@lastinch/core';
import {
  type ChooseAnswer,
  constraintText,
  stageText,
  WANT_MEANINGS,
  WANT_NAMES,
  WANT_RULES,
  type Want,
  WHY_ENDED,
} from '@lastinch/core/choose';
import { useCallback, useMemo } from 'react';
import type { ChooseDesk, ChooseView } from '../../choosing.ts';
import panel from '../../design/panel.module.css';
import { Choice } from '../../parts/Choice.tsx';
import { useStore } from '../../store.ts';
import type { Workbench } from '../../workbench.ts';
import { CandidateScatter } from './CandidateScatter.tsx';
import { CandidateTable } from './CandidateTable.tsx';
import style from './ChooseStep.module.css';
import { ChosenPanel } from './ChosenPanel.tsx';
import type { Shown } from './shown.ts';
import { edgesOf, isAskedFor, markOf, type WantWords } from './wants.ts';

export interface ChooseResultProps {
  readonly workbench: Workbench;
  readonly desk: ChooseDesk;
  readonly answer: ChooseAnswer;
  readonly system: UnitSystem;
}

/** Who stands, as a picture and as a table that belong together; below, the one that is looked at. */
export function ChooseResult({ workbench, desk, answer, system }: ChooseResultProps) {
  const view = useStore(desk.view, (each) => each);
  const words = useMemo<WantWords>(() => ({ system, money: answer.money }), [system, answer.money]);
  const shown = useMemo(() => shownOf(answer, view.most), [answer, view.most]);
  const change = useCallback(
    (part: Partial<ChooseView>) => desk.view.set((now) => ({ ...now, ...part })),
    [desk],
  );
  const choose = useCallback((chosen: number) => change({ chosen }), [change]);
  const chosen = shown.find(({ of }) => of.index === view.chosen) ?? null;
  const nameOf = useCallback(
    (index: number): string => {
      if (index === answer.doNothing?.index) return 'doing nothing';
      if (index === answer.onlySettings?.index) return 'the settings alone';
      return shown.find(({ of }) => of.index === index)?.mark ?? 'another one';
    },
    [shown, answer],
  );
  const out = shown.filter(({ isIn, isMember }) => isMember && !isIn).length;
  return (
    <>
      <section className={panel.panel} aria-labelledby="choose-list">
        <h3 className={panel.heading} id="choose-list">
          None of these is beaten in all that is wanted
        </h3>
        <p className={panel.sentence}>{leadText(answer)}</p>
        {answer.members.length === 0 ? null : (
          <>
            <Filters answer={answer} view={view} words={words} onChange={change} />
            <p className={style.about} role="status">
              {out === 0
                ? ''
                : `${answer.members.length - out} of ${answer.members.length} are within what is asked for; the others are drawn small.`}
            </p>
            <CandidateScatter shown={shown} view={view} words={words} onChoose={choose} />
            <CandidateTable
              answer={answer}
              shown={shown}
              chosen={view.chosen}
              words={words}
              onChoose={choose}
            />
            <p className={style.about}>
              {answer.wants.map((want) => `${WANT_NAMES[want]}: ${WANT_MEANINGS[want]}`).join('; ')}. ± covers
              95 in 100 of the rigs that your readings allow, from {answer.trials} of them. All candidates are
              driven in the same rigs, so differences are surer than each figure.
            </p>
          </>
        )}
      </section>
      {chosen === null ? null : (
        <ChosenPanel workbench={workbench} answer={answer} shown={chosen} words={words} nameOf={nameOf} />
      )}
      <section className={panel.panel} aria-labelledby="choose-singles">
        <h3 className={panel.heading} id="choose-singles">
          What each step alone buys
        </h3>
        <p className={style.lead}>Each change by itself, with the best settings for each trim.</p>
        <CandidateTable
          answer={answer}
          shown={answer.singles.map((of) => ({ mark: '', of, isMember: of.isOnFront, isIn: true }))}
          chosen={null}
          words={words}
          caption="Each change alone"
        />
      </section>
      <section className={panel.panel} aria-labelledby="choose-others">
        <h3 className={panel.heading} id="choose-others">
          What became of the others
        </h3>
        <ul className={style.bullets}>
          {tallyTexts(answer).map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
      </section>
    </>
  );
}

/** The members, then those that are there to be compared with. */
function shownOf(
  { members, doNothing, onlySettings }: ChooseAnswer,
  most: ChooseView['most'],
): readonly Shown[] {
  const others = [
    { mark: 'as it is', of: doNothing },
    { mark: 'set only', of: onlySettings },
  ];
  return [
    ...members.map((of, place) => ({
      mark: markOf(place),
      of,
      isMember: true,
      isIn: isAskedFor(of, most),
    })),
    ...others.flatMap(({ mark, of }) =>
      of === null || of.isOnFront ? [] : [{ mark, of, isMember: false, isIn: true }],
    ),
  ];
}

function Filters(props: {
  readonly answer: ChooseAnswer;
  readonly view: ChooseView;
  readonly words: WantWords;
  readonly onChange: (part: Partial<ChooseView>) => void;
}) {
  const { answer, view, words, onChange } = props;
  const axes = answer.wants.map((want) => ({ value: want, label: WANT_NAMES[want] }));
  return (
    <>
      <div className={style.fields}>
        <Choice label="Across" options={axes} value={view.x} onChange={(x) => onChange({ x: x as Want })} />
        <Choice label="Up" options={axes} value={view.y} onChange={(y) => onChange({ y: y as Want })} />
      </div>
      <fieldset className={style.limits}>
        <legend className={style.small}>Only those with</legend>
        <div className={style.fields}>
          {answer.wants.map((want) => {
            const edges = edgesOf(answer, want, words);
            if (edges.length === 0) return null;
            const { [want]: edge, ...rest } = view.most;
            return (
              <Choice
                key={want}
                label={`${WANT_NAMES[want]} at ${WANT_RULES[want].sign === 1 ? 'most' : 'least'}`}
                options={[
                  { value: '', label: 'any' },
                  ...edges.map(({ value, text }) => ({ value: String(value), label: text })),
                ]}
                value={edge === undefined ? '' : String(edge)}
                onChange={(value) =>
                  onChange({ most: value === '' ? rest : { ...rest, [want]: Number(value) } })
                }
              />
            );
          })}
        </div>
      </fieldset>
    </>
  );
}

function leadText({ tally, members, why, trials }: ChooseAnswer): string {
  const early = tally.discarded.reduce((sum, { candidates }) => sum + candidates, 0);
  const stand = members.length === 1 ? '1 is beaten by none' : `${members.length} are beaten by none`;
  return `${tally.barred} of ${tally.seen} candidates break a constraint, ${early} were beaten before they were driven to the end, ${tally.judged} were judged in full: at the nominal readings and in ${trials} rigs over their tolerances. ${stand}. ${WHY_ENDED[why]}`;
}

function tallyTexts({ tally }: ChooseAnswer): readonly string[] {
  const merged = new Map<string, number>();
  for (const { stage, candidates } of tally.discarded) {
    const said = stageText(stage);
    merged.set(said, (merged.get(said) ?? 0) + candidates);
  }
  const texts = [
    ...tally.barredBy
      .filter(({ candidates }) => candidates > 0)
      .map(
        ({ constraint, candidates, alone }) =>
          `${candidates} break ${constraintText(constraint)}, ${alone} of them nothing else.`,
      ),
    ...[...merged]
      .filter(([, candidates]) => candidates > 0)
      .map(([said, candidates]) => `${candidates} were seen to be beaten ${said}.`),
  ];
  return texts.length === 0 ? ['All were judged in full.'] : texts;
}
