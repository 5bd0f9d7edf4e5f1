import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** A solid as files, and what it is by our own count. */
export interface Shown {
  readonly name: string;
  readonly stl: string;
  readonly threeMf: string;
  readonly triangles: number;
  /** [mm³] */
  readonly volume: number;
}

/** What a program made of a solid: what it said, and whether that is one closed body of our volume. */
export interface Verdict {
  readonly said: string;
  readonly fine: boolean;
}

/** Another program that reads the files. */
export interface OtherProgram {
  readonly name: string;
  readonly get: string;
  /** Null where it is not installed; else what shows a solid to it. */
  readonly start: (folder: string) => ((shown: Shown) => Verdict) | null;
}

const run = (command: string, words: readonly string[]) => {
  const { status, stdout, stderr } = spawnSync(command, [...words], { encoding: 'utf8', maxBuffer: 1e8 });
  return { status, text: `${stdout ?? ''}${stderr ?? ''}` };
};
const exists = (command: string): boolean => spawnSync('sh', ['-c', `command -v ${command}`]).status === 0;
const number = (text: string, pattern: RegExp): number => Number(pattern.exec(text)?.[1] ?? Number.NaN);
/** To what the rounding of a file leaves. */
const isNear = (found: number, ours: number): boolean => Math.abs(found / ours - 1) < 1e-4;

const admesh: OtherProgram = {
  name: 'admesh (STL)',
  get: 'apt-get install admesh',
  start: () =>
    exists('admesh')
      ? ({ stl, volume }) => {
          const { text } = run('admesh', [stl]);
          const [parts, open, found] = [
            number(text, /Number of parts\s*:\s*(\d+)/),
            number(text, /Total disconnected facets\s*:\s*(\d+)/),
            number(text, /Volume\s*:\s*([\d.]+)/),
          ];
          return {
            said: `${parts} part, ${open} open facets, ${found} mm³`,
            fine: parts === 1 && open === 0 && isNear(found, volume),
          };
        }
      : null,
};

const TRIMESH = `
import sys, trimesh
for file in sys.argv[1:]:
    m = trimesh.load(file, force='mesh')
    print(int(m.is_watertight), int(m.is_winding_consistent), m.body_count, m.volume)
`;
const trimesh: OtherProgram = {
  name: 'trimesh (STL and 3MF)',
  get: 'pip install trimesh networkx lxml scipy',
  start: () =>
    run('python3', ['-c', 'import trimesh, networkx, lxml']).status === 0
      ? ({ stl, threeMf, volume }) => {
          const { text } = run('python3', ['-c', TRIMESH, stl, threeMf]);
          const lines = text
            .trim()
            .split('\n')
            .map((line) => line.split(' ').map(Number));
          const fine = lines.map(
            ([tight, wound, bodies, found]) =>
              tight === 1 && wound === 1 && bodies === 1 && isNear(found, volume),
          );
          return {
            said: lines
              .map(
                ([tight, wound, bodies, found]) =>
                  `closed ${tight}, wound ${wound}, bodies ${bodies}, ${Math.round(found)} mm³`,
              )
              .join('; '),
            fine: lines.length === 2 && fine.every((one) => one),
          };
        }
      : null,
};

const strict: OtherProgram = {
  name: 'lib3mf, strict (3MF)',
  get: 'apt-get install g++ lib3mf-dev',
  start: (folder) => {
    if (!exists('g++') || !existsSync('/usr/include/lib3mf')) return null;
    const reader = join(folder, 'read-3mf');
    const built = run('g++', [
      '-I/usr/include/lib3mf',
      join(import.meta.dirname, 'read-3mf.cc'),
      '-l3MF',
      '-o',
      reader,
    ]);
    if (built.status !== 0) throw new Error(built.text);
    return ({ threeMf, triangles }) => {
      const { text } = run(reader, [threeMf]);
      const said = text.trim().split('\n').join('; ');
      return {
        said,
        fine: new RegExp(`^warnings 0; object points \\d+ triangles ${triangles} closed 1$`).test(said),
      };
    };
  },
};

/** The one thing that the schema takes from elsewhere. */
const XML_LANG =
  '<xs:schema xmlns:xs="http://www.w3.org/2001/XMLSchema" targetNamespace="http://www.w3.org/XML/1998/namespace"><xs:attribute name="lang" type="xs:language"/></xs:schema>';
const SCHEMA = join(import.meta.dirname, 'core.xsd');
const schema: OtherProgram = {
  name: 'xmllint with the schema of the 3MF core specification',
  get: 'apt-get install libxml2-utils unzip, and "core 1_2_2.xsd" of github.com/3MFConsortium/spec_core (BSD 2-clause) beside this script as core.xsd, or its path in LASTINCH_3MF_SCHEMA',
  start: (folder) => {
    const from = process.env.LASTINCH_3MF_SCHEMA ?? SCHEMA;
    if (!exists('xmllint') || !exists('unzip') || !existsSync(from)) return null;
    const [here, lang] = [join(folder, 'core.xsd'), join(folder, 'xml-lang.xsd')];
    writeFileSync(lang, XML_LANG);
    // xmllint knows no count as high as the schema's, and the network is not asked for the one attribute.
    const text = readFileSync(from, 'utf8')
      .replaceAll('maxOccurs="2147483647"', 'maxOccurs="unbounded"')
      .replace('http://www.w3.org/2001/xml.xsd', lang);
    writeFileSync(here, text);
    const check = (file: string) => run('xmllint', ['--huge', '--noout', '--schema', here, file]);
    return ({ threeMf, name }) => {
      mkdirSync(join(folder, name), { recursive: true });
      const model = join(folder, name, '3dmodel.model');
      const bytes = spawnSync('unzip', ['-p', threeMf, '3D/3dmodel.model'], { maxBuffer: 1e9 }).stdout;
      writeFileSync(model, bytes);
      const { status, text: said } = check(model);
      // A schema that takes anything proves nothing: the same model with a word misspelt has to fail.
      writeFileSync(
        `${model}.wrong`,
        Buffer.from(bytes).toString('latin1').replace(' v1="', ' w1="'),
        'latin1',
      );
      const wrong = check(`${model}.wrong`).status;
      return {
        said: `${said.trim().split('\n').pop()?.replace(model, 'the model')}; with a word misspelt ${wrong === 0 ? 'it passes too' : 'it does not'}`,
        fine: status === 0 && wrong !== 0,
      };
    };
  },
};

const slicer: OtherProgram = {
  name: 'a slicer (3MF)',
  get: 'apt-get install prusa-slicer',
  start: (folder) =>
    exists('prusa-slicer')
      ? ({ threeMf, triangles, volume, name }) => {
          const { text } = run('prusa-slicer', ['--info', threeMf]);
          const [facets, parts, found] = [
            number(text, /number_of_facets = (\d+)/),
            number(text, /number_of_parts =\s*(\d+)/),
            number(text, /volume = ([\d.]+)/),
          ];
          const isManifold = /manifold = yes/.test(text);
          let said = `manifold ${isManifold ? 'yes' : 'no'}, ${parts} part, ${found} mm³`;
          let fine = isManifold && parts === 1 && facets === triangles && isNear(found, volume);
          // Minutes for a whole stop: the coupon is sliced.
          if (name === 'coupon') {
            const gcode = join(folder, `${name}.gcode`);
            const words = [
              '--export-gcode',
              '--layer-height',
              '0.2',
              '--fill-density',
              '100%',
              '--fill-pattern',
              'rectilinear',
            ];
            run('prusa-slicer', [...words, '--output', gcode, threeMf]);
            const used = existsSync(gcode)
              ? 1000 * number(readFileSync(gcode, 'utf8'), /filament used \[cm3\] = ([\d.]+)/)
              : Number.NaN;
            said += `; sliced, ${Math.round(used)} mm³ of filament`;
            // The slicer rounds walls to its lines.
            fine &&= Math.abs(used / volume - 1) < 0.1;
          }
          return { said, fine };
        }
      : null,
};

export const PROGRAMS: readonly OtherProgram[] = [admesh, trimesh, strict, schema, slicer];
