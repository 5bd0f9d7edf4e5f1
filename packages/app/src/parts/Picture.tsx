import { type Scene, svgItems, svgOf } from '@lastinch/picture';
import { type RefObject, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import style from './Picture.module.css';

/** Width of an element in whole pixels, following its changes; null until it is known. */
export function useWidth(ref: RefObject<HTMLElement | null>): number | null {
  const [width, setWidth] = useState<number | null>(null);
  useEffect(() => {
    const element = ref.current;
    if (element === null) return;
    const observer = new ResizeObserver(([entry]) => {
      if (entry !== undefined) setWidth(Math.floor(entry.contentRect.width));
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, [ref]);
  return width;
}

/** Whether an element is well outside of what is seen; never on paper. */
function useOutOfView(ref: RefObject<HTMLElement | null>, watched: boolean): boolean {
  const [out, setOut] = useState(false);
  useEffect(() => {
    const element = ref.current;
    if (element === null || !watched) return;
    const observer = new IntersectionObserver(([entry]) => setOut(entry?.isIntersecting === false), {
      rootMargin: '25%',
    });
    const printed = (): void => flushSync(() => setOut(false));
    observer.observe(element);
    window.addEventListener('beforeprint', printed);
    return () => {
      observer.disconnect();
      window.removeEventListener('beforeprint', printed);
    };
  }, [ref, watched]);
  return out;
}

/** A scaled drawing, laid out for the width that there is. */
export function Picture(props: {
  readonly id: string;
  /** Short name for a screen reader. */
  readonly title: string;
  /** What it shows, for someone who cannot see it. */
  readonly description: string;
  readonly draw: (width: number) => Scene;
  /** Leaves it as it is while nobody can see it: for charts that change in each frame of a drag. */
  readonly onlyInView?: boolean;
}) {
  const place = useRef<HTMLDivElement>(null);
  const width = useWidth(place);
  const { id, title, description, draw } = props;
  const scene = useMemo(() => (width === null || width === 0 ? null : draw(width)), [width, draw]);
  // Frame, title and textures stay while only what is drawn changes: a drag changes it in each frame.
  const shell =
    scene === null || width === null
      ? ''
      : svgOf(
          { ...scene, items: [] },
          { width, title, description, idPrefix: id, style: false, paper: false },
        );
  const frame = useMemo(() => ({ __html: shell }), [shell]);
  const outOfView = useOutOfView(place, props.onlyInView === true);
  useLayoutEffect(() => {
    const svg = shell === '' ? null : place.current?.querySelector('svg');
    if (scene === null || svg === null || svg === undefined) return;
    const old = svg.querySelector(':scope > g');
    if (old !== null && outOfView) return;
    const layer = old ?? svg.appendChild(document.createElementNS('http://www.w3.org/2000/svg', 'g'));
    layer.innerHTML = svgItems(scene, id);
  }, [scene, shell, id, outOfView]);
  // biome-ignore lint/security/noDangerouslySetInnerHtml: made by our own picture package, which escapes all text.
  return <div ref={place} className={style.picture} dangerouslySetInnerHTML={frame} />;
}
