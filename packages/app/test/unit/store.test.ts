import { describe, expect, it } from 'vitest';
import { createStore, sameMembers } from '../../src/store.ts';

describe('store', () => {
  it('tells everyone once about a new value, and nobody about none', () => {
    const store = createStore({ count: 0 });
    let told = 0;
    const stop = store.subscribe(() => {
      told += 1;
    });
    store.set((state) => ({ count: state.count + 1 }));
    store.set((state) => state);
    expect(store.get().count).toBe(1);
    expect(told).toBe(1);
    stop();
    store.set(() => ({ count: 5 }));
    expect(told).toBe(1);
  });

  it('shows the whole new value to whoever is told', () => {
    const store = createStore(1);
    const seen: number[] = [];
    store.subscribe(() => seen.push(store.get()));
    store.set(() => 2);
    expect(seen).toEqual([2]);
  });

  it('compares members one level deep', () => {
    expect(sameMembers({ a: 1, b: 2 }, { a: 1, b: 2 })).toBe(true);
    expect(sameMembers({ a: 1 }, { a: 1, b: 2 } as { a: number })).toBe(false);
    expect(sameMembers([1, 2], [1, 3])).toBe(false);
    expect(sameMembers({ a: {} }, { a: {} })).toBe(false);
  });
});
