import { cornerAt, type End, type Pose, type Setup, type TravelResult } from '@lastinch/core';
import { axlePose, rearScene, rigShapeOf, sideScene } from '@lastinch/picture';
import { useMemo } from 'react';
import type { Lane } from '../../answers.ts';
import { Picture } from '../../parts/Picture.tsx';
import { END_NAME, setupLabel } from '../../parts/place-name.ts';
import style from './PoseBench.module.css';

/** One axle of one setup in a pose, from the right side and from behind. */
export function PosePictures(props: {
  readonly lane: Lane;
  readonly setup: Setup;
  readonly travel: TravelResult;
  readonly end: End;
  readonly pose: Pose;
  /** What is left beside each stop, worked out by the core. */
  readonly labels: Readonly<Record<'left' | 'right', string>>;
}) {
  const { setup, travel, end, pose, labels, lane } = props;
  const shape = useMemo(() => rigShapeOf(setup, travel), [setup, travel]);
  const words = {
    [cornerAt(end, 'left')]: labels.left,
    [cornerAt(end, 'right')]: labels.right,
  };
  // A drawing is made anew for each pose anyway, so the callbacks need no memory.
  const side = (width: number) =>
    sideScene(shape, axlePose(end, pose), { width, side: 'right', labels: words });
  const rear = (width: number) => rearScene(shape, axlePose(end, pose), { width, end, labels: words });
  const said = `Left: ${labels.left}. Right: ${labels.right}.`;
  return (
    <div className={style.drawings}>
      <Picture
        id={`rear-${lane}`}
        title={`${END_NAME[end]} axle from behind, ${setupLabel(setup.id)}`}
        description={said}
        draw={rear}
      />
      <Picture
        id={`side-${lane}`}
        title={`Rig from the right, ${setupLabel(setup.id)}`}
        description={said}
        draw={side}
      />
    </div>
  );
}
