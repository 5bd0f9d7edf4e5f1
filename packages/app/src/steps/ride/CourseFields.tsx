import type { UnitSystem } from '@lastinch/core';
import { useStore } from '../../store.ts';
import type { Workbench } from '../../workbench.ts';
import { FieldRow } from '../measure/FieldRow.tsx';
import style from './RideStep.module.css';

/** The ground as it stands in the rig file, to be changed where it is driven over. */
export function CourseFields(props: {
  readonly workbench: Workbench;
  readonly course: string;
  readonly system: UnitSystem;
}) {
  const { workbench, course, system } = props;
  const fields = useStore(workbench.document, (state) => state.fields).filter(
    ({ path }) => path[0] === 'courses' && path[1] === course,
  );
  if (fields.length === 0) return null;
  return (
    <details className={style.details}>
      <summary>Change this course</summary>
      <div className={style.fields}>
        {fields.map((field) => (
          <FieldRow
            key={field.path.join('.')}
            workbench={workbench}
            field={field}
            rule={null}
            system={system}
          />
        ))}
      </div>
    </details>
  );
}
