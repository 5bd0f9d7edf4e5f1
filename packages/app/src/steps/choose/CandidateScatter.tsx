import { type ScatterOptions, scatterPlaces, scatterScene } from '@lastinch/picture';
import { type MouseEvent, useCallback, useRef } from 'react';
import type { ChooseView } from '../../choosing.ts';
import { Picture } from '../../parts/Picture.tsx';
import style from './ChooseStep.module.css';
import type { Shown } from './shown.ts';
import { axisName, shownSpread, type WantWords } from './wants.ts';

/** How far beside a mark a finger may be [px]. */
const REACH = 24;

/** Who stands, by two of the things that are wanted. A press on a mark looks at it, as its row in the table does. */
export function CandidateScatter(props: {
  readonly shown: readonly Shown[];
  readonly view: ChooseView;
  readonly words: WantWords;
  readonly onChoose: (index: number) => void;
}) {
  const { shown, view, words, onChoose } = props;
  const { x, y, chosen } = view;
  const drawn = useRef<ScatterOptions | null>(null);
  const draw = useCallback(
    (width: number) => {
      const points = shown.flatMap(({ mark, of, isMember, isIn }) => {
        const [across, up] = [of.wants[x], of.wants[y]];
        if (across === undefined || up === undefined) return [];
        return [
          {
            name: String(of.index),
            letter: mark,
            x: shownSpread(x, across, words.system),
            y: shownSpread(y, up, words.system),
            kind: isMember ? ('member' as const) : ('other' as const),
            isChosen: of.index === chosen,
            isFaint: !isIn,
          },
        ];
      });
      const options = { points, xLabel: axisName(x, words), yLabel: axisName(y, words), width };
      drawn.current = options;
      return scatterScene(options);
    },
    [shown, x, y, chosen, words],
  );
  const press = (event: MouseEvent<HTMLDivElement>): void => {
    const svg = event.currentTarget.querySelector('svg');
    if (svg === null || drawn.current === null) return;
    const box = svg.getBoundingClientRect();
    const at = { x: event.clientX - box.left, y: box.bottom - event.clientY };
    const near = scatterPlaces(drawn.current)
      .map((place) => ({ place, far: Math.hypot(place.x - at.x, place.y - at.y) }))
      .sort((a, b) => a.far - b.far)[0];
    if (near !== undefined && near.far <= REACH) onChoose(Number(near.place.name));
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions lint/a11y/useKeyWithClickEvents: the rows of the table below do the same by keyboard.
    <div className={style.plot} onClick={press}>
      <Picture
        id="choose-scatter"
        title={`Candidates by ${axisName(x, words)} and ${axisName(y, words)}`}
        description="A round mark for each that no other beats, a square one for those to compare with, a ring around the one that is looked at, a bar over the interval of each figure. The table below holds the figures."
        draw={draw}
      />
    </div>
  );
}
