/** Samples of a function of time [s], from 0 to the duration. */
export const sampled = (rate: number, duration: number, of: (time: number) => number): Float64Array =>
  Float64Array.from({ length: Math.round(duration * rate) + 1 }, (_, n) => of(n / rate));

/** A swing that fades in over its first second, so that it begins at rest. */
export const swing =
  (size: number, frequency: number) =>
  (time: number): number =>
    size * Math.min(1, time) ** 2 * Math.sin(2 * Math.PI * frequency * time);

/** A smooth bump of a given length that begins at a given time. */
export const bump =
  (size: number, start: number, length: number) =>
  (time: number): number => {
    const place = (time - start) / length;
    return place > 0 && place < 1 ? size * Math.sin(Math.PI * place) ** 2 : 0;
  };

export const added =
  (...parts: readonly ((time: number) => number)[]) =>
  (time: number): number =>
    parts.reduce((total, part) => total + part(time), 0);
