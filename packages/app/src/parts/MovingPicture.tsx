import { type Scene, svgItems, svgOf } from '@lastinch/picture';
import { useEffect, useRef } from 'react';
import style from './Picture.module.css';
import { useWidth } from './Picture.tsx';

/** A drawing that is made anew whenever something moves, without React taking part in each frame. */
export function MovingPicture(props: {
  readonly id: string;
  readonly title: string;
  readonly description: string;
  /** The scene as it is at this moment. Must use the same roles at every moment. */
  readonly draw: (width: number) => Scene;
  /** Calls back at every move, and gives back how to stop. */
  readonly subscribe: (moved: () => void) => () => void;
}) {
  const { id, title, description, draw, subscribe } = props;
  const place = useRef<HTMLDivElement>(null);
  const width = useWidth(place);
  useEffect(() => {
    const element = place.current;
    if (element === null || width === null || width === 0) return;
    const frame = svgOf(draw(width), { width, title, description, idPrefix: id, style: false, paper: false });
    element.innerHTML = frame;
    const moving = element.querySelector('svg');
    if (moving === null) return;
    const still = [...moving.children].filter((child) => ['title', 'desc', 'defs'].includes(child.tagName));
    const layer = document.createElementNS('http://www.w3.org/2000/svg', 'g');
    moving.replaceChildren(...still, layer);
    const paint = (): void => {
      layer.innerHTML = svgItems(draw(width), id);
    };
    paint();
    return subscribe(paint);
  }, [id, title, description, draw, subscribe, width]);
  return <div ref={place} className={style.picture} />;
}
