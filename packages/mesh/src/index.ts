/**
 * Printed stops as solids, and the files that a slicer reads. Named exports only, grouped by what they are for.
 */

// --- The solid of a stop ---

export type { Solid } from './solid.ts';
export { solidOf } from './solid.ts';
export type { Loose, MadeSlice, SolidFigures } from './solid-figures.ts';
export type { SolidMesh } from './solid-mesh.ts';
export type { SolidRequest, Vents } from './solid-request.ts';

// --- How it is held ---

export type { Seat, Thread } from './seat.ts';
export { PLAY, pauseHeight, plateFor, THREADS, threadNamed } from './seat.ts';

// --- Coupons to print and press ---

export type { Coupon, CouponRequest } from './coupons.ts';
export { couponFile, couponSolids } from './coupons.ts';

// --- Files ---

export type { SolidFormat } from './files.ts';
export { fileOf, SOLID_FORMATS } from './files.ts';

// --- In a worker ---

export type { MeshAsk, MeshReply } from './mesh-messages.ts';
export { serveMesh } from './serve-mesh.ts';

// --- The lattice ---

export { sheetDensity, sheetLevel, thinnestWall } from './gyroid.ts';
