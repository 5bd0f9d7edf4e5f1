import { useId } from 'react';
import { useStore } from '../../store.ts';
import type { Workbench } from '../../workbench.ts';
import style from './MeasureStep.module.css';

/** The rig file itself. What is typed in the fields is what stands here, comments and all. */
export function RigText({ workbench }: { readonly workbench: Workbench }) {
  const text = useStore(workbench.document, (state) => state.history.text);
  const id = useId();
  return (
    <div className={style.text}>
      <label htmlFor={id} className={style.about}>
        The rig file as it will be saved. Change anything; problems are listed at the top with their line.
      </label>
      <textarea
        id={id}
        className={style.area}
        value={text}
        spellCheck={false}
        onChange={(event) => workbench.editText(event.target.value)}
        onBlur={workbench.leaveField}
      />
    </div>
  );
}
