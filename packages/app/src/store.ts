import { useCallback, useRef, useSyncExternalStore } from 'react';

/**
 * A value that changes, and those who watch it. The value itself is immutable: a change puts a new one in place.
 * The workbench has three, and each states its scope:
 * - document (`document/`): what is saved in the rig file, with undo;
 * - session (`session.ts`): what a person chose to look at; forgotten with the tab, except unit system and setups;
 * - momentary (component state): a slider under the finger, the moment of a ride under the cursor.
 */
export interface Store<State> {
  get(): State;
  /** Puts a new value in place and tells everyone, once, after it is whole. */
  set(change: (state: State) => State): void;
  subscribe(listener: () => void): () => void;
}

export function createStore<State>(initial: State): Store<State> {
  let state = initial;
  const listeners = new Set<() => void>();
  return {
    get: () => state,
    set(change) {
      const next = change(state);
      if (Object.is(next, state)) return;
      state = next;
      for (const listener of [...listeners]) listener();
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

/** Equal when both have the same members, compared one level deep. For selectors that build a small object or list. */
export function sameMembers<T>(a: T, b: T): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  const keys = Object.keys(a);
  if (keys.length !== Object.keys(b).length) return false;
  return keys.every((key) => Object.is(a[key as keyof T], b[key as keyof T]));
}

/**
 * Watches one part of a store. The component draws again only when that part differs by `same`,
 * so a letter typed into one field redraws that field and not the other hundred.
 */
export function useStore<State, Part>(
  store: Store<State>,
  select: (state: State) => Part,
  same: (a: Part, b: Part) => boolean = Object.is,
): Part {
  const last = useRef<{ readonly part: Part } | null>(null);
  const read = useCallback(() => {
    const part = select(store.get());
    if (last.current !== null && same(last.current.part, part)) return last.current.part;
    last.current = { part };
    return part;
  }, [store, select, same]);
  return useSyncExternalStore(store.subscribe, read, read);
}
