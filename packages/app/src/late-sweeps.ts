import { createStore } from './store.ts';
import { NO_SWEEP, type SweepDesk } from './sweep-state.ts';

/**
 * A desk whose workings are fetched with the first sweep that is asked for, so that they are no part of what has to
 * arrive before anybody sees the workbench.
 */
export function lateSweepDesk(load: () => Promise<SweepDesk>): SweepDesk {
  const sweep = createStore(NO_SWEEP);
  let arriving: Promise<SweepDesk> | null = null;
  const arrive = async (): Promise<SweepDesk> => {
    const desk = await load();
    desk.sweep.subscribe(() => sweep.set(() => desk.sweep.get()));
    return desk;
  };
  return {
    sweep,
    ask(question) {
      sweep.set((state) => ({ ...state, status: 'scanning', share: 0, asked: question, message: '' }));
      arriving ??= arrive();
      arriving.then(
        (desk) => {
          // Given up, or asked otherwise, before it came.
          if (sweep.get().asked === question && sweep.get().status === 'scanning') desk.ask(question);
        },
        () => {
          arriving = null;
          sweep.set((state) => ({ ...state, status: 'broken', message: 'The sweep could not be fetched.' }));
        },
      );
    },
    cancel() {
      if (arriving === null) return;
      sweep.set((state) => (state.status === 'scanning' ? { ...state, status: 'cancelled' } : state));
      void arriving.then((desk) => desk.cancel());
    },
  };
}
