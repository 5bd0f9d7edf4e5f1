import { bad, good, type Result, type Rig, unitsOfRig } from '@lastinch/core';
import { type Sheet, sheetOfRig } from '@lastinch/core/sheet';
import { type PaperSize, sheetHtml, sheetTypst } from '@lastinch/paper';
import {
  type ExitCode,
  knownSetups,
  paperAsked,
  readRigFile,
  refuse,
  unitsAsked,
  unknownName,
} from '../asked.ts';
import { writeOver } from '../hosts/files.ts';
import { writeJson, writeLines } from '../hosts/output.ts';
import { pdfOf } from '../hosts/pdf.ts';
import { progressLine } from '../hosts/progress.ts';

export interface SheetOptions {
  readonly setup: string;
  readonly against?: string;
  readonly course?: string;
  readonly out?: string;
  readonly paper?: string;
  readonly units?: string;
  readonly json?: boolean;
}

/** `lastinch sheet FILE`: the build sheet of a setup, as a page or as PDF. */
export async function sheet(file: string, options: SheetOptions): Promise<ExitCode> {
  const units = unitsAsked(options.units);
  if (!units.ok) return refuse(units.problems);
  const size = paperAsked(options.paper);
  if (!size.ok) return refuse(size.problems);
  const kind = kindAsked(options);
  if (!kind.ok) return refuse(kind.problems);
  const rig = await readRigFile(file);
  if (!rig.ok) return refuse(rig.problems);
  const known = knownSetups(rig.value, [options.setup, options.against]);
  if (!known.ok) return refuse(known.problems);
  const courses = coursesNamed(rig.value, options.course);
  if (!courses.ok) return refuse(courses.problems);
  const line = progressLine(process.stderr);
  const made = sheetOfRig(
    {
      rig: rig.value,
      setup: options.setup,
      ...(options.against !== undefined && { against: options.against }),
      ...(courses.value !== null && { courses: courses.value }),
      system: units.value ?? unitsOfRig(rig.value),
    },
    (share) => line.show('driving', share),
  );
  line.clear();
  if (!made.ok) return refuse(made.problems);
  return put(made.value, kind.value, size.value, options);
}

async function put(made: Sheet, kind: Kind, size: PaperSize, { out }: SheetOptions): Promise<ExitCode> {
  if (kind === 'json') {
    writeJson({ schema: 'lastinch/sheet/1', ...made });
    return 0;
  }
  if (kind === 'html' && out === undefined) {
    writeLines([sheetHtml(made, size)]);
    return 0;
  }
  const bytes =
    kind === 'pdf' ? await pdfOf(sheetTypst(made, size)) : good(Buffer.from(sheetHtml(made, size)));
  if (!bytes.ok) return refuse(bytes.problems);
  const written = writeOver(out as string, bytes.value);
  if (!written.ok) return refuse(written.problems);
  writeLines([`Build sheet written to ${written.value}.`]);
  return 0;
}

type Kind = 'json' | 'html' | 'pdf';

function kindAsked({ out, json }: SheetOptions): Result<Kind> {
  if (json) return good('json');
  if (out === undefined || /\.html?$/i.test(out)) return good('html');
  if (/\.pdf$/i.test(out)) return good('pdf');
  return bad({
    code: 'ask-option',
    where: { key: '--out' },
    found: out,
    accepted: 'a name that ends in .pdf or .html',
  });
}

function coursesNamed(rig: Rig, text: string | undefined): Result<readonly string[] | null> {
  if (text === undefined) return good(null);
  const names = text.split(',').map((name) => name.trim());
  const known = Object.keys(rig.courses);
  const unknown = names.filter((name) => !known.includes(name));
  return unknown.length === 0
    ? good(names)
    : bad(...unknown.map((name) => unknownName('ask-unknown-course', name, known)));
}
