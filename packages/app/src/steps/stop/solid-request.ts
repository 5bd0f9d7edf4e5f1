import type { StopDesign } from '@lastinch/core/stops';
import type { Seat, SolidRequest } from '@lastinch/mesh';
import type { PrintShape } from '../../stops.ts';

/** The solid of a design: the same body, with its foot made to be held. */
export const solidRequestOf = (design: StopDesign, shape: PrintShape, seat: Seat | null): SolidRequest => ({
  body: design.body,
  cell: shape.cell,
  plate: shape.foot ?? 0,
  cap: shape.cap ?? 0,
  seat,
  vents: shape.vents ?? null,
});
