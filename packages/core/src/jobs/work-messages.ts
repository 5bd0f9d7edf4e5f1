import type { Problem } from '../finding/problem.ts';
import type { WorkPlan } from './work.ts';

/** Messages to a worker that shares work; each reply carries the id of what it answers. */
export type WorkAsk =
  /** Replies: `opened`, `broken`. */
  | { readonly kind: 'open'; readonly id: number; readonly plan: WorkPlan }
  /** Units `from` … `to` − 1 of the plan opened last. Replies: `rows-done`, `broken`. */
  | { readonly kind: 'rows'; readonly id: number; readonly from: number; readonly to: number };

/** Messages from it. */
export type WorkReply =
  | { readonly kind: 'opened'; readonly id: number; readonly problems: readonly Problem[] }
  | { readonly kind: 'rows-done'; readonly id: number; readonly rows: Float64Array }
  | { readonly kind: 'broken'; readonly id: number; readonly message: string };
