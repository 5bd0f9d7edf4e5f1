import { SeverityMark } from '../../parts/SeverityMark.tsx';
import { tie } from '../../parts/tie.ts';
import style from './StopStep.module.css';

/** What is doubtful about an answer, and what would settle it. */
export function Doubts({ lines }: { readonly lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <ul aria-label="Doubts">
      {lines.map((line) => (
        <li key={line} className={style.stop}>
          <SeverityMark severity="unproven" />
          <span>{tie(line)}</span>
        </li>
      ))}
    </ul>
  );
}
