import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { cruise, type ICruiseResult } from 'dependency-cruiser';
import { readRoomList } from './room-list.ts';
import { roomRules } from './room-rules.ts';

const ROOTS = ['packages', 'scripts', 'validation', 'bench'];
const SKIP = new Set(['node_modules', 'dist', 'artifacts']);

/** Every TypeScript file under the given folders of a house, as paths with forward slashes from its root. */
export function sourceFiles(root: string, folders: readonly string[] = ROOTS): string[] {
  const found: string[] = [];
  const walk = (folder: string): void => {
    let entries: ReturnType<typeof list>;
    try {
      entries = list(join(root, folder));
    } catch {
      return; // a folder that this house does not have
    }
    for (const entry of entries) {
      const path = `${folder}/${entry.name}`;
      if (entry.isDirectory() && !SKIP.has(entry.name)) walk(path);
      else if (/\.tsx?$/.test(entry.name) && !entry.name.endsWith('.d.ts')) found.push(path);
    }
  };
  const list = (path: string) => readdirSync(path, { withFileTypes: true });
  for (const folder of folders) walk(folder);
  return found.sort();
}

export interface RoomsReport {
  /** Files read by the checker. */
  readonly modules: number;
  /** Imports followed. */
  readonly arrows: number;
  /** One line for each refused import, and for each file that the checker did not read. */
  readonly faults: readonly string[];
}

/**
 * Runs dependency-cruiser with the rules of the house over all its source files.
 * A file on disk that the checker did not read is a fault: with a compiler it cannot use it reads nothing and
 * reports a clean house.
 */
export async function checkRooms(root: string): Promise<RoomsReport> {
  const files = sourceFiles(root);
  const rules = roomRules(root, readRoomList(root));
  const before = process.cwd();
  // dependency-cruiser resolves from the working folder whatever `baseDir` says for some of its look-ups.
  process.chdir(root);
  let result: ICruiseResult;
  try {
    const { output } = await cruise(
      files,
      {
        baseDir: root,
        validate: true,
        ruleSet: { forbidden: rules },
        tsPreCompilationDeps: true,
        doNotFollow: { path: 'node_modules' },
        exclude: { path: '(^|/)dist/' },
        combinedDependencies: false,
      },
      { exportsFields: ['exports'], conditionNames: ['import', 'types', 'node', 'default'] } as never,
    );
    if (typeof output === 'string') throw new Error('dependency-cruiser answered with text instead of data');
    result = output;
  } finally {
    process.chdir(before);
  }

  const read = new Set(result.modules.map((module) => module.source));
  const unread = files.filter((file) => !read.has(file));
  const faults = result.summary.violations.map((found) => {
    const rule = rules.find((one) => one.name === found.rule.name);
    const detour = found.cycle?.map((step) => step.name).join(' → ');
    return `${found.from} → ${detour ?? found.to}: ${rule?.comment ?? ''} [${found.rule.name}]`;
  });
  if (files.length === 0) faults.push('No source file was found: the check has nothing to check.');
  for (const file of unread) faults.push(`${file} was not read by the dependency check.`);
  return {
    modules: files.length - unread.length,
    arrows: result.modules.reduce((sum, module) => sum + module.dependencies.length, 0),
    faults,
  };
}
