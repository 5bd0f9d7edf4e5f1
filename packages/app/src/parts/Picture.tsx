import { type Scene, svgOf } from '@lastinch/picture';
import { type RefObject, useEffect, useMemo, useRef, useState } from 'react';
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

/** A scaled drawing, laid out for the width that there is. */
export function Picture(props: {
  readonly id: string;
  /** Short name for a screen reader. */
  readonly title: string;
  /** What it shows, for someone who cannot see it. */
  readonly description: string;
  readonly draw: (width: number) => Scene;
}) {
  const place = useRef<HTMLDivElement>(null);
  const width = useWidth(place);
  const { id, title, description, draw } = props;
  const svg = useMemo(
    () =>
      width === null || width === 0
        ? ''
        : svgOf(draw(width), { width, title, description, idPrefix: id, style: false, paper: false }),
    [width, draw, title, description, id],
  );
  // biome-ignore lint/security/noDangerouslySetInnerHtml: made by our own picture package, which escapes all text.
  return <div ref={place} className={style.picture} dangerouslySetInnerHTML={{ __html: svg }} />;
}
