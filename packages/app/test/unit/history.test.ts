import { describe, expect, it } from 'vitest';
import { endGesture, record, redo, startHistory, undo } from '../../src/document/history.ts';
import { applyChange, changeBetween, revertChange } from '../../src/document/text-change.ts';

const step = (label: string, gesture: string | null = null) => ({ label, gesture });

describe('text change', () => {
  it('goes there and back for texts that share a beginning, an end, both or nothing', () => {
    const texts = [
      '',
      'gap: 4 in',
      'gap: 4 1/8 in',
      'stop gap: 4 in',
      'gap: 4 in ± 1/16',
      'aaa',
      'aa',
      '½ in',
      'é',
    ];
    for (const before of texts)
      for (const after of texts) {
        const change = changeBetween(before, after);
        expect(applyChange(before, change)).toBe(after);
        expect(revertChange(after, change)).toBe(before);
      }
  });

  it('keeps only what differs', () => {
    expect(changeBetween('gap: 4 in # tape', 'gap: 4 1/8 in # tape')).toEqual({
      at: 7,
      removed: '',
      inserted: '1/8 ',
    });
  });

  it('does not cut a character in two that takes two units', () => {
    const change = changeBetween('note: 🛠', 'note: 🛞');
    expect(change.removed).toBe('🛠');
    expect(change.inserted).toBe('🛞');
  });
});

describe('history', () => {
  it('H1: a change that changes nothing leaves no step', () => {
    const history = startHistory('a');
    expect(record(history, 'a', step('nothing'))).toBe(history);
  });

  it('H2: a reading typed letter by letter is one step', () => {
    let history = startHistory('gap: ');
    for (const text of ['gap: 4', 'gap: 4 ', 'gap: 4 i', 'gap: 4 in'])
      history = record(history, text, step('gap', 'front.stop.gap'));
    expect(history.past).toHaveLength(1);
    expect(undo(history).text).toBe('gap: ');
  });

  it('H2: a gesture that ends where it began leaves no step', () => {
    let history = record(startHistory('4 in'), '4 1in', step('gap', 'gap'));
    history = record(history, '4 in', step('gap', 'gap'));
    expect(history.past).toHaveLength(0);
  });

  it('H2: another field begins another step', () => {
    let history = record(startHistory('a b'), 'a1 b', step('a', 'a'));
    history = record(history, 'a1 b1', step('b', 'b'));
    expect(history.past.map(({ label }) => label)).toEqual(['a', 'b']);
  });

  it('H3: a new change drops what was undone', () => {
    let history = record(startHistory('1'), '2', step('two'));
    history = record(undo(history), '3', step('three'));
    expect(history.future).toHaveLength(0);
    expect(redo(history).text).toBe('3');
  });

  it('H4: leaving a field ends its gesture', () => {
    let history = record(startHistory(''), '4', step('gap', 'gap'));
    history = record(endGesture(history), '45', step('gap', 'gap'));
    expect(history.past).toHaveLength(2);
  });

  it('H5, H6: undo and redo give back exactly the texts, step by step', () => {
    const texts = ['one', 'one two', 'two', '', 'two # comment kept\n', 'two # comment\n'];
    let history = startHistory(texts[0] ?? '');
    for (const text of texts.slice(1)) history = record(history, text, step(text));
    for (const text of [...texts].reverse().slice(1)) {
      history = undo(history);
      expect(history.text).toBe(text);
    }
    expect(undo(history)).toBe(history);
    for (const text of texts.slice(1)) {
      history = redo(history);
      expect(history.text).toBe(text);
    }
    expect(redo(history)).toBe(history);
  });

  it('H2: typing after undo does not run into the step that was undone', () => {
    let history = record(startHistory(''), '4', step('gap', 'gap'));
    history = record(endGesture(history), '45', step('gap', 'gap'));
    history = record(undo(history), '46', step('gap', 'gap'));
    expect(undo(history).text).toBe('4');
  });
});
