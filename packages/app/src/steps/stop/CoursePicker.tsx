import { needle, type Rig, type UnitSystem } from '@lastinch/core';
import style from './CoursePicker.module.css';

/** Which courses of the rig file a stop has to do on. The browser's own boxes. */
export function CoursePicker(props: {
  readonly rig: Rig;
  readonly chosen: readonly string[];
  readonly system: UnitSystem;
  readonly onChange: (chosen: readonly string[]) => void;
}) {
  const { rig, chosen, system, onChange } = props;
  const courses = Object.values(rig.courses);
  if (courses.length === 0) return <p>This rig file has no courses. Add one under “courses:” in the file.</p>;
  return (
    <fieldset className={style.picker}>
      <legend className={style.legend}>Courses that it has to do</legend>
      <div className={style.list}>
        {courses.map(({ id, speed, shape }) => (
          <label key={id} className={style.course}>
            <input
              type="checkbox"
              className={style.box}
              checked={chosen.includes(id)}
              onChange={(event) =>
                onChange(
                  // In the order of the file, whichever was ticked first.
                  courses
                    .map((each) => each.id)
                    .filter((each) => (each === id ? event.target.checked : chosen.includes(each))),
                )
              }
            />
            <span>
              {id}
              <span className={style.speed}>
                {shape.kind === 'drop' ? ' let go' : speed === null ? '' : ` ${needle(speed, system)}`}
              </span>
            </span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
