import { ENDS, type End, type Rig } from '@lastinch/core';
import { useState } from 'react';
import panel from '../../design/panel.module.css';
import frame from '../../design/step.module.css';
import { PlainButton } from '../../parts/PlainButton.tsx';
import { END_NAME, setupLabel } from '../../parts/place-name.ts';
import { useStore } from '../../store.ts';
import type { Workbench } from '../../workbench.ts';
import { copyOfSetup, freeName } from './new-proposal.ts';
import { PatchFieldRow } from './PatchFieldRow.tsx';
import style from './ProposalBench.module.css';
import { type PatchField, patchFieldsOf } from './patch-fields.ts';

/** What the proposed setup changes, end by end, and the making of another one to try. */
export function ProposalBench({ workbench }: { readonly workbench: Workbench }) {
  const rig = useStore(workbench.document, (state) => state.rig);
  const proposed = useStore(workbench.answers, (state) => state.proposed.setupId);
  if (rig === null) return null;
  const patch = rig.setups[proposed];
  const makeNew = (): void => {
    const name = freeName(rig);
    workbench.edit(copyOfSetup(patch, name), { label: `new setup ${name}`, gesture: null });
    workbench.choose({ proposed: name });
  };
  return (
    <section className={`${panel.panel} ${style.bench}`} aria-labelledby="proposal-title">
      <div className={style.head}>
        <h3 className={panel.heading} id="proposal-title">
          What is proposed: <span className={style.name}>{setupLabel(proposed)}</span>
        </h3>
        <PlainButton onPress={makeNew}>
          {patch === undefined ? 'Start a proposal' : 'Copy into a new proposal'}
        </PlainButton>
      </div>
      {patch === undefined ? (
        <p className={frame.lead}>The rig as it was measured. Start a proposal to change something.</p>
      ) : (
        <>
          {patch.notes === '' ? null : <p className={frame.lead}>{patch.notes}</p>}
          <div className={style.ends}>
            {ENDS.map((end) => (
              <PatchEnd
                key={`${proposed}.${end}`}
                workbench={workbench}
                rig={rig}
                setupId={proposed}
                end={end}
              />
            ))}
          </div>
        </>
      )}
    </section>
  );
}

function PatchEnd(props: {
  readonly workbench: Workbench;
  readonly rig: Rig;
  readonly setupId: string;
  readonly end: End;
}) {
  const { workbench, rig, setupId, end } = props;
  const patch = rig.setups[setupId]?.[end] ?? {};
  const fields = patchFieldsOf(rig, end);
  // Settled once: a field must not move away under the finger when what is typed becomes a change.
  const [changed] = useState(() => new Set(Object.keys(patch)));
  const inView = fields.filter(({ key }) => FIRST.has(key) || changed.has(key));
  const row = (field: PatchField) => (
    <PatchFieldRow
      key={field.key}
      workbench={workbench}
      field={field}
      patch={patch}
      path={['setups', setupId, end, field.key]}
      place={END_NAME[end]}
    />
  );
  return (
    <fieldset className={style.end}>
      <legend className={style.legend}>{END_NAME[end]}</legend>
      <div className={style.fields}>{inView.map(row)}</div>
      <details className={style.more}>
        <summary>More that can be changed at the {END_NAME[end].toLowerCase()}</summary>
        <div className={style.fields}>{fields.filter((field) => !inView.includes(field)).map(row)}</div>
      </details>
    </fieldset>
  );
}

/** The changes that are tried first. */
const FIRST: ReadonlySet<string> = new Set(['stop', 'seatAndStopDrop', 'stopSpacer']);
