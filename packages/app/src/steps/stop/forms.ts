import { useCallback } from 'react';
import { type Store, useStore } from '../../store.ts';

/** What somebody typed into the Stop step, by name of the field. Scope: session. */
export type Forms = Store<Readonly<Record<string, string>>>;

/** One field of the step, and how to change it. */
export function useTyped(forms: Forms, name: string, usual = ''): [string, (text: string) => void] {
  const text = useStore(forms, (all) => all[name] ?? usual);
  const put = useCallback((typed: string) => forms.set((all) => ({ ...all, [name]: typed })), [forms, name]);
  return [text, put];
}

/** Typed text and what was understood: a value, or why not, or neither while nothing stands there. */
export interface Read<Value> {
  readonly value: Value | null;
  readonly error: string | null;
}
