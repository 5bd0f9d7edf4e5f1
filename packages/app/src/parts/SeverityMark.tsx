import type { Severity } from '@lastinch/core';
import style from './SeverityMark.module.css';

/** The word that goes with each shape. The shape alone, and the word alone, both say it; colour only helps. */
export const SEVERITY_WORD: Readonly<Record<Severity, string>> = {
  over: 'Over the limit',
  unproven: 'Not proven',
  note: 'Note',
  fine: 'Within limits',
};

/** Octagon to stop, triangle to doubt, ring to know, tick for done. */
export function SeverityMark(props: { readonly severity: Severity; readonly withWord?: boolean }) {
  return (
    <span className={style.mark} data-severity={props.severity}>
      <svg viewBox="0 0 20 20" aria-hidden="true" className={style.shape}>
        <Shape severity={props.severity} />
      </svg>
      <span className={props.withWord === false ? style.hidden : style.word}>
        {SEVERITY_WORD[props.severity]}
      </span>
    </span>
  );
}

function Shape({ severity }: { readonly severity: Severity }) {
  switch (severity) {
    case 'over':
      return (
        <>
          <path d="M6 1h8l5 5v8l-5 5H6l-5-5V6z" className={style.solid} />
          <path d="M6.5 6.5l7 7M13.5 6.5l-7 7" className={style.cut} />
        </>
      );
    case 'unproven':
      return (
        <>
          <path d="M10 2l9 16H1z" className={style.line} />
          <path d="M10 7.5v5M10 14.6v.9" className={style.stroke} />
        </>
      );
    case 'note':
      return (
        <>
          <circle cx="10" cy="10" r="8" className={style.line} />
          <path d="M10 9.2v5M10 5.9v.9" className={style.stroke} />
        </>
      );
    case 'fine':
      return <path d="M3 10.5l4.8 4.8L17.5 5" className={style.tick} />;
  }
}
