import { designDoubtText } from '@lastinch/core/stops';
import type { ToldSolid } from '../terminal/stop-solid-page.ts';

/** The answer of `stop solid --json`: `lastinch/stop-solid/1`, SI. */
export const stopSolidJson = ({ file, bytes, material, seat, design, figures }: ToldSolid) => ({
  schema: 'lastinch/stop-solid/1',
  units: 'SI',
  file,
  bytes,
  material,
  seat: seat === null ? null : 'thread' in seat ? { kind: seat.kind, thread: seat.thread.name } : { ...seat },
  ...figures,
  doubts: design.doubts.map((code) => ({ code, text: designDoubtText(code) })),
});
