import type { PartAnswers } from '@lastinch/core/choose';

/** Pieces of the study that was worked on last, kept over a reload. */
export interface PieceStore {
  /** Those of the study of this name; none when another one was kept, or nothing can be. */
  read(study: string): Promise<PartAnswers>;
  write(study: string, pieces: PartAnswers): void;
}

const DATABASE = 'lastinch';
const TABLE = 'pieces';
const LAST = 'choose';

interface Kept {
  readonly study: string;
  readonly pieces: PartAnswers;
}

/** In the browser's own database. Where storage is forbidden nothing is kept, and the study begins anew. */
export function pieceStore(): PieceStore {
  const open = (): Promise<IDBDatabase> =>
    new Promise((opened, failed) => {
      const asked = indexedDB.open(DATABASE, 1);
      asked.onupgradeneeded = () => asked.result.createObjectStore(TABLE);
      asked.onsuccess = () => opened(asked.result);
      asked.onerror = () => failed(asked.error);
    });
  const within = async <T>(
    mode: IDBTransactionMode,
    ask: (table: IDBObjectStore) => IDBRequest<T>,
  ): Promise<T> => {
    const database = await open();
    try {
      return await new Promise<T>((found, failed) => {
        const asked = ask(database.transaction(TABLE, mode).objectStore(TABLE));
        asked.onsuccess = () => found(asked.result);
        asked.onerror = () => failed(asked.error);
      });
    } finally {
      database.close();
    }
  };
  return {
    async read(study) {
      try {
        const kept = await within<Kept | undefined>('readonly', (table) => table.get(LAST));
        return kept?.study === study ? kept.pieces : [];
      } catch {
        return [];
      }
    },
    write(study, pieces) {
      const kept: Kept = { study, pieces };
      within('readwrite', (table) => table.put(kept, LAST)).catch(() => undefined);
    },
  };
}
