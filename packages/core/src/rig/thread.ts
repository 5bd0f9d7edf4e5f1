const INCH = 0.0254;

/** Major diameter and pitch [m]. */
export interface ThreadSize {
  readonly diameter: number;
  readonly pitch: number;
  readonly form: 'metric' | 'inch';
}

const metric = (diameter: number, pitch: number): ThreadSize => ({
  diameter: diameter / 1000,
  pitch: pitch / 1000,
  form: 'metric',
});
const inch = (diameter: number, perInch: number): ThreadSize => ({
  diameter: diameter * INCH,
  pitch: INCH / perInch,
  form: 'inch',
});

/** Threads that can be named. @source ISO 261 and ASME B1.1 (from memory) */
export const THREADS = {
  M8: metric(8, 1.25),
  M10: metric(10, 1.5),
  'M10x1.25': metric(10, 1.25),
  M12: metric(12, 1.75),
  'M12x1.5': metric(12, 1.5),
  M14: metric(14, 2),
  M16: metric(16, 2),
  '5/16-18': inch(5 / 16, 18),
  '3/8-16': inch(3 / 8, 16),
  '3/8-24': inch(3 / 8, 24),
  '7/16-14': inch(7 / 16, 14),
  '1/2-13': inch(1 / 2, 13),
  '1/2-20': inch(1 / 2, 20),
  '5/8-11': inch(5 / 8, 11),
} as const satisfies Readonly<Record<string, ThreadSize>>;
export type ThreadName = keyof typeof THREADS;
export const THREAD_NAMES = Object.keys(THREADS) as readonly ThreadName[];

/** Classes of bolts and studs that can be named; what they bear stands in `bracket/thread`. */
export const BOLT_GRADES = ['8.8', '10.9', '12.9', 'grade 2', 'grade 5', 'grade 8'] as const;
export type BoltGrade = (typeof BOLT_GRADES)[number];
