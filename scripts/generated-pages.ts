import { rigJsonSchema } from '@lastinch/core/rigfile';
import { validationPage } from '../validation/page.ts';
import { apiText } from './api-text.ts';
import { demoPicture } from './demo-picture.ts';
import { precisionPicture } from './precision-picture.ts';
import { problemsPage } from './problems-page.ts';
import { readRoomList } from './room-list.ts';
import { roomsDrawing, withDrawing } from './rooms-drawing.ts';

/** A file that is made, whole or in part, from code. */
export interface GeneratedPage {
  /** Path from the root of the house. */
  readonly file: string;
  /** Its text as it should be, given the root and the text that stands there now (null: no such file). */
  readonly make: (root: string, before: string | null) => string;
}

export const generatedPages: readonly GeneratedPage[] = [
  {
    file: 'packages/core/api.txt',
    make: (root) =>
      apiText(`${root}/packages/core`, [
        'src/index.ts',
        'src/rigfile/index.ts',
        'src/links.ts',
        'src/stops.ts',
        'src/bracket.ts',
        'src/choose.ts',
        'src/trail.ts',
      ]),
  },
  {
    file: 'docs/rig-file.schema.json',
    make: () => `${JSON.stringify(rigJsonSchema(), null, 2)}\n`,
  },
  { file: 'docs/problems.md', make: () => problemsPage() },
  {
    file: 'docs/architecture.md',
    make: (root, before) => {
      const page = withDrawing(before ?? '', roomsDrawing(readRoomList(root)));
      if (page === null) throw new Error('docs/architecture.md has no place for the drawing of the rooms');
      return page;
    },
  },
  { file: 'docs/validation.md', make: () => validationPage() },
  { file: 'docs/pictures/demo-columns.svg', make: (root) => demoPicture(root) },
  { file: 'docs/pictures/work-precision.svg', make: (root) => precisionPicture(root) },
];
