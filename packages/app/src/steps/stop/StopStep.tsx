import { STOP_CAUTIONS } from '@lastinch/core/stops';
import panel from '../../design/panel.module.css';
import frame from '../../design/step.module.css';
import { Segments } from '../../parts/Segments.tsx';
import type { StopDesks } from '../../stops.ts';
import { useStore } from '../../store.ts';
import { useUnits } from '../../use-units.ts';
import type { Workbench } from '../../workbench.ts';
import { useTyped } from './forms.ts';
import { KindPanel } from './KindPanel.tsx';
import { NeedPanel } from './NeedPanel.tsx';
import { PressPanel } from './PressPanel.tsx';
import { PrintPanel } from './PrintPanel.tsx';

const PAGES = [
  { value: 'need', label: 'Which it needs' },
  { value: 'press', label: 'From a press' },
  { value: 'kind', label: 'By its kind' },
  { value: 'print', label: 'To print' },
] as const;
type Page = (typeof PAGES)[number]['value'];

/** Stops of one end: which curve it needs, and where a curve comes from. */
export default function StopStep(props: { readonly workbench: Workbench; readonly desks: StopDesks }) {
  const { workbench, desks } = props;
  const rig = useStore(workbench.document, (state) => state.rig);
  const system = useUnits(workbench);
  const [page, setPage] = useTyped(desks.forms, 'page', 'need');
  return (
    <div className={frame.step}>
      <h2 className={frame.title}>Stop</h2>
      <Segments label="Ask about a stop" options={PAGES} value={page as Page} onChange={setPage} />
      {page === 'need' ? (
        rig === null ? (
          <p className={frame.lead}>The rig file cannot be read yet, so there is nothing to drive.</p>
        ) : (
          <NeedPanel workbench={workbench} desks={desks} rig={rig} system={system} />
        )
      ) : null}
      {page === 'press' ? <PressPanel workbench={workbench} desks={desks} rig={rig} system={system} /> : null}
      {page === 'kind' ? <KindPanel workbench={workbench} desks={desks} rig={rig} system={system} /> : null}
      {page === 'print' ? <PrintPanel workbench={workbench} desks={desks} rig={rig} system={system} /> : null}
      <section className={panel.note} aria-label="Cautions about stops">
        {STOP_CAUTIONS.map((caution) => (
          <p key={caution}>{caution}</p>
        ))}
      </section>
    </div>
  );
}
