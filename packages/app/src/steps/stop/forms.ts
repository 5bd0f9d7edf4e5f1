import { type Dimension, parseQuantity, problemText } from '@lastinch/core';
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

/** One quantity above zero; nothing typed is no mistake. */
export function readOne(text: string, dimension: Dimension): Read<number> {
  const list = readList(text, dimension);
  if (list.value === null) return { value: null, error: list.error };
  return list.value.length === 1
    ? { value: list.value[0] ?? null, error: null }
    : { value: null, error: 'One value, not several.' };
}

/** Quantities with commas between them, from one end to the other, none below zero. */
export function readList(text: string, dimension: Dimension): Read<readonly number[]> {
  if (text.trim() === '') return { value: null, error: null };
  const read = text.split(',').map((each) => parseQuantity(each, dimension));
  const problems = read.flatMap((one) => (one.ok ? [] : one.problems));
  const [first] = problems;
  if (first !== undefined) return { value: null, error: problemText({ ...first, where: {} }) };
  const value = read.flatMap((one) => (one.ok ? [one.value.value] : []));
  return value.some((one) => one < 0) ? { value: null, error: 'Not below zero.' } : { value, error: null };
}
