import type { Sheet, SheetRequest } from '@lastinch/core/sheet';
import { createWorkDesk, type DeskWorker, type FromWorker, type WorkDesk } from './work-desk.ts';

export interface ToSheetWorker {
  readonly id: number;
  readonly question: SheetRequest;
}
export type FromSheetWorker = FromWorker<Sheet>;
export type SheetDesk = WorkDesk<SheetRequest, Sheet>;

/** Has the build sheet written away from the page: it drives every course of the file. */
export const createSheetDesk = (spawn: () => DeskWorker<ToSheetWorker, Sheet>): SheetDesk =>
  createWorkDesk(spawn, (id, question) => ({ id, question }));

/** The browser's own worker; its script is fetched when a sheet is first asked for. */
export const spawnSheetWorker = (): DeskWorker<ToSheetWorker, Sheet> =>
  new Worker(new URL('./hosts/sheet-worker.ts', import.meta.url), {
    type: 'module',
    name: 'sheet',
  }) as DeskWorker<ToSheetWorker, Sheet>;
