import { expect, it } from 'vitest';
import { tie } from '../../src/parts/tie.ts';

it('keeps a figure on one line and lets the words around it break', () => {
  expect(tie('spare 1 1/2 in ± 3/32 at the sump')).toBe(
    'spare 1\u00a01/2\u00a0in\u00a0±\u00a03/32 at the sump',
  );
  expect(tie('4.4 g ± 1.7 above rest')).toBe('4.4\u00a0g\u00a0±\u00a01.7 above rest');
  expect(tie('2 inches, 3 gaps')).toBe('2 inches, 3 gaps');
});
