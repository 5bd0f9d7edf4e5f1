import { ENDS, type End, type Setup, type UnitSystem } from '@lastinch/core';
import type { DrawnAxle } from '@lastinch/picture';
import { useCallback, useDeferredValue, useMemo, useRef, useState } from 'react';
import { type Answers, LANES } from '../../answers.ts';
import panel from '../../design/panel.module.css';
import frame from '../../design/step.module.css';
import type { LinksDesk } from '../../links.ts';
import { PairKey } from '../../parts/PairCell.tsx';
import { PlainButton } from '../../parts/PlainButton.tsx';
import { END_NAME, LANE_NAME, setupLabel } from '../../parts/place-name.ts';
import { RangeField } from '../../parts/RangeField.tsx';
import { Segments } from '../../parts/Segments.tsx';
import { useStore } from '../../store.ts';
import { useUnits } from '../../use-units.ts';
import type { Workbench } from '../../workbench.ts';
import { copyOfSetup, freeName } from '../travel/new-proposal.ts';
import { AT_RIDE, type AxleStand, reachOf } from './axle.ts';
import { instantText } from './figures.ts';
import { KnockOn } from './KnockOn.tsx';
import { type FiguresPair, LinkCurves } from './LinkCurves.tsx';
import { LinkDrawings } from './LinkDrawings.tsx';
import style from './LinksStep.module.css';
import { linkedPair, posedPair, useAxles, useCurves } from './lanes.ts';
import { MeasureLinks } from './MeasureLinks.tsx';
import { PointPanel } from './PointPanel.tsx';
import { PoseFigures } from './PoseFigures.tsx';
import { editsOfMove, type PointTarget, targetId, targetName, targetsOf } from './points.ts';
import { inWords, rollInWords, stepText } from './stand-words.ts';
import { Troubles } from './Troubles.tsx';
import { type HeldPoint, usePointHold } from './use-drag.ts';

/** Links of one axle in both setups: drawn from three sides, moved by hand, followed over bump and roll. */
export default function LinksStep(props: {
  readonly workbench: Workbench;
  readonly desk: LinksDesk;
  readonly onReading: (key: string) => void;
}) {
  const { workbench, desk } = props;
  const rig = useStore(workbench.document, (state) => state.rig);
  const answers = useStore(workbench.answers, (state) => state);
  const system = useUnits(workbench);
  const [end, setEnd] = useState<End>('rear');
  if (rig === null)
    return (
      <div className={frame.step}>
        <h2 className={frame.title}>Links</h2>
        <p className={frame.lead}>The rig file cannot be read yet, so there is nothing to draw.</p>
      </div>
    );
  const measured = rig[end].points.linkage !== null;
  return (
    <div className={frame.step}>
      <div className={style.head}>
        <h2 className={frame.title}>Links</h2>
        <Segments
          label="Axle"
          options={ENDS.map((each) => ({ value: each, label: END_NAME[each] }))}
          value={end}
          onChange={setEnd}
        />
      </div>
      {measured ? (
        <AxleBench key={end} workbench={workbench} answers={answers} end={end} system={system} />
      ) : (
        <MeasureLinks workbench={workbench} rig={rig} end={end} onReading={props.onReading} />
      )}
      <KnockOn workbench={workbench} desk={desk} system={system} onReading={props.onReading} />
    </div>
  );
}

function AxleBench(props: {
  readonly workbench: Workbench;
  readonly answers: Answers;
  readonly end: End;
  readonly system: UnitSystem;
}) {
  const { workbench, answers, end, system } = props;
  const [stand, setStand] = useState<AxleStand>(AT_RIDE);
  const [chosen, setChosen] = useState<PointTarget | null>(null);
  const proposal = workbenchProposal(answers);
  const targets = useMemo(
    () => (answers.now.setup === null ? [] : targetsOf(answers.now.setup, end)),
    [answers.now.setup, end],
  );
  const selected = chosen ?? targets[0] ?? null;

  const write = useCallback(
    ({ target, total }: HeldPoint) => {
      if (proposal === null) return;
      const edits = editsOfMove(proposal, end, target, total, system);
      if (edits.length === 0) return;
      workbench.edit(edits, {
        label: `${END_NAME[end]}: ${targetName(target).toLowerCase()} moved`,
        gesture: `links.${end}.${targetId(target)}`,
      });
    },
    [workbench, proposal, end, system],
  );
  const hold = usePointHold(proposal, end, system, write);

  const resting = useAxles(answers, end, null);
  const moving = useAxles(answers, end, hold.held);
  const checks = LANES.flatMap((lane) => answers[lane].check ?? []);
  const reach = reachOf(checks, end);
  const bump = Math.min(reach.bump, Math.max(-reach.droop, stand.bump));
  const shown: AxleStand = { bump, roll: stand.roll };
  const posed = posedPair(moving, end, shown);
  const curves = useCurves(moving, end, reach, shown.roll, hold.held !== null);
  const here: FiguresPair = {
    now: posed.now?.figures ?? null,
    proposed: posed.proposed?.figures ?? null,
  };
  const drawn = LANES.flatMap((lane) => posed[lane]?.drawn ?? []);
  // A point that was pulled out of reach can be pulled back: its handle stays where it was last seen.
  const lastSeen = useRef<DrawnAxle | null>(null);
  lastSeen.current = posed.proposed?.drawn ?? lastSeen.current;
  const atRest = useMemo(() => {
    const pair = posedPair(resting, end, AT_RIDE);
    return LANES.flatMap((lane) => pair[lane]?.drawn ?? []);
  }, [resting, end]);

  const bumpText = inWords(shown.bump, system);
  const rollText = rollInWords(shown.roll, system);
  // What is under the finger comes first; the curves follow in the time that is left of the frame.
  const charts = useDeferredValue(
    useMemo(() => ({ figures: curves, bump: shown.bump, rollText }), [curves, shown.bump, rollText]),
  );
  const description = LANES.flatMap((lane) => {
    const figures = here[lane];
    return figures === null
      ? []
      : [`${LANE_NAME[lane]}: instant centre ${instantText(figures, 0, system) ?? 'far off'}.`];
  }).join(' ');
  const select = (target: PointTarget): void => setChosen(target);
  return (
    <>
      <section className={`${panel.panel} ${style.bench}`} aria-labelledby="link-drawings-title">
        <h3 className={frame.hidden} id="link-drawings-title">
          {END_NAME[end]} axle from three sides
        </h3>
        <PairKey
          setups={{ now: setupLabel(answers.now.setupId), proposed: setupLabel(answers.proposed.setupId) }}
        />
        <div className={style.sliders}>
          <RangeField
            label="Droop to bump"
            min={-reach.droop}
            max={reach.bump}
            step={0.001}
            value={shown.bump}
            valueText={bumpText}
            onChange={(value) => setStand({ ...shown, bump: Math.abs(value) < 0.0005 ? 0 : value })}
          />
          <RangeField
            label="Axle roll"
            min={-MOST_ROLL}
            max={MOST_ROLL}
            step={MOST_ROLL / 120}
            value={shown.roll}
            valueText={rollText}
            onChange={(roll) => setStand({ ...shown, roll: Math.abs(roll) < 1e-6 ? 0 : roll })}
          />
        </div>
        <Troubles axles={moving} posed={posed} system={system} />
        {atRest.length === 0 ? null : (
          <LinkDrawings
            end={end}
            axles={drawn}
            resting={atRest}
            reach={reach}
            movable={proposal === null ? null : lastSeen.current}
            hold={hold}
            selected={chosen === null ? null : targetId(chosen)}
            system={system}
            helpId="link-keys"
            description={description}
            onSelect={select}
          />
        )}
        <p className={frame.about} id="link-keys">
          {proposal === null
            ? 'Start a proposal to move points.'
            : `Drag a joint of the proposal, or move it with the arrow keys: ${stepText(system)}. Links keep their lengths; the axle gives way. Bushes are taken as stiff.`}
        </p>
        <PlainButton isDisabled={shown.bump === 0 && shown.roll === 0} onPress={() => setStand(AT_RIDE)}>
          Back to ride height
        </PlainButton>
      </section>

      <section className={`${panel.panel} ${style.proposal}`} aria-labelledby="move-point-title">
        <h3 className={panel.heading} id="move-point-title">
          Move a point
        </h3>
        {proposal === null || selected === null ? (
          <StartProposal workbench={workbench} />
        ) : (
          <PointPanel
            workbench={workbench}
            setup={proposal}
            end={end}
            targets={targets}
            selected={selected}
            held={hold.held}
            axles={linkedPair(moving)}
            system={system}
            onSelect={select}
          />
        )}
      </section>

      <PoseFigures
        end={end}
        figures={here}
        where={`${END_NAME[end]} axle at ${bumpText}, ${rollText}`}
        system={system}
      />
      <LinkCurves end={end} {...charts} system={system} />
    </>
  );
}

/** Most roll of an axle that the slider goes to [rad]. */
const MOST_ROLL = (15 * Math.PI) / 180;

/** The proposed setup when it is one that can be changed: the rig as measured is not. */
function workbenchProposal({ proposed }: Answers): Setup | null {
  return proposed.setup !== null && proposed.setup.rig.setups[proposed.setupId] !== undefined
    ? proposed.setup
    : null;
}

function StartProposal({ workbench }: { readonly workbench: Workbench }) {
  const rig = useStore(workbench.document, (state) => state.rig);
  if (rig === null) return null;
  const start = (): void => {
    const name = freeName(rig);
    workbench.edit(copyOfSetup(undefined, name), { label: `new setup ${name}`, gesture: null });
    workbench.choose({ proposed: name });
  };
  return (
    <div className={style.begin}>
      <p className={panel.sentence}>
        What was measured stays as it is. A proposal moves joints, lengthens links, and shows both side by
        side.
      </p>
      <PlainButton weight="strong" onPress={start}>
        Start a proposal
      </PlainButton>
    </div>
  );
}
