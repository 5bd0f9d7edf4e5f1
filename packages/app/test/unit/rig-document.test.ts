import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import {
  editDocument,
  isSaved,
  leaveField,
  openDocument,
  type RigDocument,
  redoDocument,
  replaceText,
  undoDocument,
  wouldLose,
} from '../../src/document/rig-document.ts';

const OCHRE = readFileSync(join(import.meta.dirname, '../../../../examples/ochre/ochre.rig.yaml'), 'utf8');
const opened = (): RigDocument => openDocument(OCHRE, 'ochre.rig.yaml', OCHRE);
const GAP = ['front', 'contacts', 'sump', 'gap'];
const type = (document: RigDocument, text: string | null, path: readonly string[] = GAP): RigDocument =>
  editDocument(document, [{ path, text }], { label: 'gap', gesture: path.join('.') });
const fieldAt = (document: RigDocument, key: string) =>
  document.fields.find(({ path }) => path.join('.') === key);

describe('rig document', () => {
  it('R1: puts a typed text into the file and leaves every other character as it was', () => {
    const edited = type(opened(), '4 1/8 in ± 1/16');
    expect(edited.history.text).toBe(OCHRE.replace('gap: 4 in ± 1/16', 'gap: 4 1/8 in ± 1/16'));
    expect(edited.rig?.front.contacts[0]?.gap.left.value).toBeCloseTo(4.125 * 0.0254, 12);
  });

  it('R2: an edit that leads through a plain value changes nothing and says why', () => {
    const edited = type(opened(), '4 in', [...GAP, 'left']);
    expect(edited.history.text).toBe(OCHRE);
    expect(edited.refused.map(({ code }) => code)).toEqual(['rig-wrong-shape']);
    expect(type(edited, '4 1/8 in').refused).toEqual([]);
  });

  it('R3, R4: keeps a text that cannot be used, names its line, and keeps the last good rig', () => {
    const good = opened();
    const edited = type(good, '4 1/8');
    expect(fieldAt(edited, GAP.join('.'))?.typed).toBe('4 1/8');
    expect(edited.rig).toBe(good.rig);
    expect(edited.rigIsCurrent).toBe(false);
    const line = OCHRE.split('\n').findIndex((each) => each.includes('gap: 4 in')) + 1;
    expect(edited.problems[0]?.where).toMatchObject({ file: 'ochre.rig.yaml', line, key: GAP.join('.') });
    const put = type(edited, '4 1/8 in');
    expect(put.rigIsCurrent).toBe(true);
    expect(put.problems).toEqual([]);
  });

  it('R4: keeps the last good rig when the text is no YAML at all', () => {
    const good = opened();
    const broken = replaceText(good, `${OCHRE}\n  : [`, { label: 'text', gesture: null });
    expect(broken.rig).toBe(good.rig);
    expect(broken.problems.length).toBeGreaterThan(0);
    expect(undoDocument(broken).rigIsCurrent).toBe(true);
  });

  it('R5: is saved again when undo comes back to what is on disk', () => {
    const edited = type(opened(), '4 1/8 in');
    expect(isSaved(edited)).toBe(false);
    expect(wouldLose(edited)).toBe(true);
    expect(isSaved(undoDocument(edited))).toBe(true);
    expect(isSaved(redoDocument(undoDocument(edited)))).toBe(false);
  });

  it('loses nothing when the untouched demo is closed', () => {
    const demo = openDocument(OCHRE, 'ochre.rig.yaml', null);
    expect(wouldLose(demo)).toBe(false);
    expect(wouldLose(type(demo, '4 1/8 in'))).toBe(true);
  });

  it('takes a reading typed letter by letter back in one step, and the next visit in another', () => {
    let document = opened();
    for (const text of ['5', '5 ', '5 i', '5 in']) document = type(document, text);
    document = leaveField(document);
    document = type(document, '5 1/2 in');
    expect(fieldAt(undoDocument(document), GAP.join('.'))?.typed).toBe('5 in');
    expect(undoDocument(undoDocument(document)).history.text).toBe(OCHRE);
  });

  it('keeps the fields that say the same as the same objects, so that they need not be drawn again', () => {
    const before = opened();
    const after = type(before, '4 1/8 in ± 1/16');
    const changed = after.fields.filter((field, index) => field !== before.fields[index]);
    expect(changed.map(({ path }) => path.join('.'))).toEqual([GAP.join('.')]);
  });

  it('knows by which rule each gap was filled', () => {
    expect(opened().rules.get('measured.cgHeight')).toBe('cg-height');
    expect(type(opened(), '30 in ± 1', ['measured', 'cgHeight']).rules.has('measured.cgHeight')).toBe(false);
  });
});
