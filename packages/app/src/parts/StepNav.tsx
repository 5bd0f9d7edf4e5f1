import type { Step } from '../session.ts';
import style from './StepNav.module.css';

export interface StepLink {
  readonly step: Step;
  readonly title: string;
  /** How this step stands, in a few words. */
  readonly state: string;
}

/** The steps of the job, in the order in which it is done. */
export function StepNav(props: { readonly steps: readonly StepLink[]; readonly current: Step }) {
  return (
    <nav className={style.nav} aria-label="Steps of the job">
      <ol className={style.list}>
        {props.steps.map(({ step, title, state }, index) => (
          <li key={step}>
            <a
              href={`#${step}`}
              className={style.link}
              aria-current={step === props.current ? 'step' : undefined}
            >
              <span className={style.number} aria-hidden="true">
                {index + 1}
              </span>
              <span className={style.title}>{title}</span>
              <span className={style.state}>{state}</span>
            </a>
          </li>
        ))}
      </ol>
    </nav>
  );
}
