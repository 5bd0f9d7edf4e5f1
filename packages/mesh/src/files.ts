import type { SolidMesh } from './solid-mesh.ts';
import { stlOf } from './stl.ts';
import { threeMfOf } from './three-mf.ts';

export const SOLID_FORMATS = ['3mf', 'stl'] as const;
export type SolidFormat = (typeof SOLID_FORMATS)[number];

/** One solid as the bytes of a file. */
export const fileOf = (format: SolidFormat, title: string, mesh: SolidMesh): Uint8Array =>
  format === 'stl' ? stlOf(mesh, title) : threeMfOf(title, [{ name: title, mesh, at: [0, 0] }]);
