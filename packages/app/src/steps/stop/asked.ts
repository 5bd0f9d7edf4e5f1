import {
  type End,
  FASTEST,
  needle,
  parseQuantity,
  problemText,
  type Rig,
  SLOWEST,
  type UnitSystem,
} from '@lastinch/core';
import type { Demand } from '@lastinch/core/stops';
import { useMemo } from 'react';
import type { Lane } from '../../answers.ts';
import { useStore } from '../../store.ts';
import type { Workbench } from '../../workbench.ts';
import { type Forms, type Read, useTyped } from './forms.ts';

/** A rig that is let go goes down, not along [m/s]. */
const ANY_SPEED = 1;

/** Which end of which setup a stop is for, and what it has to do: said once, for the band and for a stop to print. */
export function useAsked(workbench: Workbench, forms: Forms, rig: Rig | null, system: UnitSystem) {
  const answers = useStore(workbench.answers, (state) => state);
  const [end, setEnd] = useTyped(forms, 'need.end', 'front') as [End, (end: string) => void];
  const [lane, setLane] = useTyped(forms, 'need.lane', 'now') as [Lane, (lane: string) => void];
  const asked = useDemands(rig?.courses ?? NO_COURSES, forms, system);
  const setup = answers[lane].setup === null ? null : answers[lane].setupId;
  return { end, setEnd, lane, setLane, setup, ...asked };
}

const NO_COURSES: Rig['courses'] = {};

/** Courses and speeds that are asked about; null while something typed cannot be used or nothing is chosen. */
function useDemands(rigCourses: Rig['courses'], forms: Forms, system: UnitSystem) {
  const known = Object.keys(rigCourses);
  const [chosen, setChosen] = useTyped(forms, 'need.courses', known[0] ?? '');
  const [text] = useTyped(forms, 'need.speed');
  const speed = useMemo(() => readSpeed(text, system), [text, system]);
  const courses = useMemo(
    () => chosen.split('\n').filter((id) => Object.hasOwn(rigCourses, id)),
    [chosen, rigCourses],
  );
  const demands = useMemo((): readonly Demand[] | null => {
    if (speed.error !== null || courses.length === 0) return null;
    const all = courses.flatMap((id): Demand[] => {
      const course = rigCourses[id];
      const own = course?.shape.kind === 'drop' ? ANY_SPEED : (speed.value ?? course?.speed ?? null);
      return course === undefined || own === null ? [] : [{ name: id, course: course.shape, speed: own }];
    });
    return all.length === courses.length ? all : null;
  }, [rigCourses, courses, speed]);
  const isSpeedMissing = speed.error === null && courses.length > 0 && demands === null;
  return {
    demands,
    speed: isSpeedMissing
      ? { value: null, error: 'One of these courses has no speed of its own: type one.' }
      : speed,
    courses,
    setCourses: (ids: readonly string[]) => setChosen(ids.join('\n')),
  };
}

function readSpeed(text: string, system: UnitSystem): Read<number> {
  if (text.trim() === '') return { value: null, error: null };
  const read = parseQuantity(text, 'speed');
  if (!read.ok)
    return { value: null, error: read.problems.map((one) => problemText({ ...one, where: {} })).join(' ') };
  const { value } = read.value;
  if (value >= SLOWEST && value <= FASTEST) return { value, error: null };
  const [slowest, fastest] = [SLOWEST, FASTEST].map((limit) => needle(limit, system));
  return { value: null, error: `A ride needs a speed from ${slowest} to ${fastest}.` };
}
