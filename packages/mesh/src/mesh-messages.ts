import type { Problem } from '@lastinch/core';
import type { SolidFormat } from './files.ts';
import type { Solid } from './solid.ts';
import type { SolidMesh } from './solid-mesh.ts';
import type { SolidRequest } from './solid-request.ts';

/** Messages to a worker that makes solids; each reply carries the id of what it answers. End the worker to cancel. */
export type MeshAsk =
  /** Replies: `progress`, then `solid-done`, `refused` or `broken`. */
  | { readonly kind: 'solid'; readonly id: number; readonly request: SolidRequest }
  /** Replies: `file-done` or `broken`. */
  | {
      readonly kind: 'file';
      readonly id: number;
      readonly format: SolidFormat;
      readonly title: string;
      readonly mesh: SolidMesh;
    };

/** Messages from it. */
export type MeshReply =
  /** Share done, never falling. */
  | { readonly kind: 'progress'; readonly id: number; readonly share: number }
  | { readonly kind: 'solid-done'; readonly id: number; readonly solid: Solid }
  | { readonly kind: 'refused'; readonly id: number; readonly problems: readonly Problem[] }
  | { readonly kind: 'file-done'; readonly id: number; readonly bytes: Uint8Array }
  | { readonly kind: 'broken'; readonly id: number; readonly message: string };
