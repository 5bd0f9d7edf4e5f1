import { formatFigure } from '@lastinch/core';
import {
  type ChooseAnswer,
  type ChosenTrim,
  changeText,
  fastestText,
  type MemberWhy,
  moneyText,
  settingsText,
  WANT_NAMES,
  wantText,
  whyTexts,
} from '@lastinch/core/choose';
import panel from '../../design/panel.module.css';
import { DataTable } from '../../parts/DataTable.tsx';
import { PlainButton } from '../../parts/PlainButton.tsx';
import { CORNER_NAME, VERDICT_WORD } from '../../parts/place-name.ts';
import { tie } from '../../parts/tie.ts';
import type { Workbench } from '../../workbench.ts';
import style from './ChooseStep.module.css';
import { propose } from './propose.ts';
import type { Shown } from './shown.ts';
import { candidateName, drivenText, type WantWords } from './wants.ts';

type ReasonWords = WantWords & { readonly nameOf: (candidate: number) => string };

/** The candidate that is looked at: what it is, what it costs, how it is set and driven; and the way into the other steps. */
export function ChosenPanel(props: {
  readonly workbench: Workbench;
  readonly answer: ChooseAnswer;
  readonly shown: Shown;
  readonly words: WantWords;
  /** How another candidate is called in the list. */
  readonly nameOf: (candidate: number) => string;
}) {
  const { workbench, answer, shown, words, nameOf } = props;
  const { mark, of } = shown;
  const member = answer.members.find(({ index }) => index === of.index);
  const { system, money } = words;
  const what = candidateName(of, system);
  return (
    <section className={panel.panel} aria-labelledby="choose-chosen">
      <h3 className={panel.heading} id="choose-chosen">
        {mark}: {what}
      </h3>
      <ul className={style.bullets}>
        {answer.wants.map((want) => {
          const spread = of.wants[want];
          return spread === undefined ? null : (
            <li key={want}>
              {WANT_NAMES[want]}: {tie(wantText(want, spread, words))}
            </li>
          );
        })}
        {of.fastest === null ? null : <li>How fast: {tie(fastestText(of.fastest, system))}.</li>}
      </ul>
      {member === undefined ? null : <Why why={member.why} words={{ ...words, nameOf }} />}
      {of.changes.length === 0 ? null : (
        <DataTable
          caption="What is changed"
          columns={['Change', 'Price', 'Hours']}
          rows={of.changes.map((change) => ({
            head: changeText(change, system),
            cells: [moneyText(change.price, money), `${Number(change.hours.toFixed(2))} h`],
          }))}
        />
      )}
      {of.trims.map((trim) => (
        <Trim key={trim.trim} workbench={workbench} trim={trim} words={words} />
      ))}
    </section>
  );
}

function Why({ why, words }: { readonly why: MemberWhy; readonly words: ReasonWords }) {
  return (
    <div className={style.part}>
      <h4 className={style.small}>Why it stands</h4>
      <ul className={style.bullets}>
        {[...new Set(whyTexts(why, words))].map((sentence) => (
          <li key={sentence}>{tie(sentence)}</li>
        ))}
      </ul>
    </div>
  );
}

function Trim(props: {
  readonly workbench: Workbench;
  readonly trim: ChosenTrim;
  readonly words: WantWords;
}) {
  const { workbench, trim, words } = props;
  const { system } = words;
  const { column, rides, settings } = trim;
  return (
    <div className={style.part}>
      <h4 className={style.small}>In {trim.trim} trim</h4>
      <p className={panel.sentence}>Set: {tie(settingsText(settings, system))}.</p>
      <p className={panel.sentence}>
        Travel column at full crush: {VERDICT_WORD[column.verdict].toLowerCase()}, least at the{' '}
        {CORNER_NAME[column.corner].toLowerCase()} with {tie(formatFigure(column.spare, { system }))} to
        spare.
      </p>
      {rides.length === 0 ? null : (
        <DataTable
          caption={`Driven in ${trim.trim} trim, at the nominal readings`}
          columns={['Course', 'Speed', 'Least beyond the reserve', 'Seat']}
          rows={rides.map((ride) => ({
            head: ride.course,
            cells: [
              tie(drivenText('speed', ride.speed, system)),
              `${tie(drivenText('length', ride.spare, system))}, ${CORNER_NAME[ride.corner].toLowerCase()}`,
              tie(drivenText('acceleration', ride.shaking, system)),
            ],
          }))}
        />
      )}
      <div className={style.buttons}>
        <PlainButton weight="strong" onPress={() => propose(workbench, trim.patch)}>
          Propose it in {trim.trim} trim
        </PlainButton>
      </div>
    </div>
  );
}
