import {
  type CourseSpec,
  heightAt,
  type RideAnswer,
  type Setup,
  sampleCourse,
  type TravelResult,
} from '@lastinch/core';
import { poseAt, rigShapeOf, sideScene } from '@lastinch/picture';
import { useCallback, useMemo } from 'react';
import type { Lane } from '../../answers.ts';
import { MovingPicture } from '../../parts/MovingPicture.tsx';
import { LANE_NAME, setupLabel } from '../../parts/place-name.ts';
import type { Moment } from './moment.ts';
import style from './RideStage.module.css';

/** Distance between drawn points of the ground [m], and how far it reaches past the axles. */
const GROUND_STEP = 0.06;
const GROUND_BEYOND = 1.2;

/** One setup driving over the ground, from the right, at the moment that is looked at. */
export function RideStage(props: {
  readonly lane: Lane;
  readonly setup: Setup;
  readonly travel: TravelResult;
  readonly course: CourseSpec;
  readonly answer: RideAnswer;
  readonly moment: Moment;
}) {
  const { lane, setup, travel, course, answer, moment } = props;
  const shape = useMemo(() => rigShapeOf(setup, travel), [setup, travel]);
  const track = useMemo(() => sampleCourse(course.shape), [course]);
  const draw = useCallback(
    (width: number) => {
      const history = answer.run.history;
      const time = moment.get();
      const at = time * answer.speed;
      const line = (side: 'left' | 'right'): number[] => {
        const points: number[] = [];
        const from = -shape.wheelbase - GROUND_BEYOND;
        for (let x = from; x <= GROUND_BEYOND; x += GROUND_STEP)
          points.push(x, heightAt(track[side], at + x));
        return points;
      };
      const sample = history === null ? 0 : Math.min(history.count - 1, Math.round(time * history.rate));
      const pose = poseAt(history?.coordinates ?? [], sample);
      return sideScene(shape, pose, {
        width,
        side: 'right',
        // Most of the way with the body: it is seen to move, and its roof stays in the picture.
        raise: 0.75 * pose.body.heave,
        ground: { near: line('right'), far: line('left') },
      });
    },
    [answer, moment, shape, track],
  );
  return (
    <figure className={style.stage} data-lane={lane}>
      <figcaption className={style.caption}>
        {LANE_NAME[lane]}: {setupLabel(setup.id)}
      </figcaption>
      <MovingPicture
        id={`stage-${lane}`}
        title={`${LANE_NAME[lane]} on ${course.id}, from the right`}
        description="The rig over the ground at the moment of the scrubber. The charts and tables below hold the figures."
        draw={draw}
        subscribe={moment.subscribe}
      />
    </figure>
  );
}
