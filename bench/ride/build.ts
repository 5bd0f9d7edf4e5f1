import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { build } from 'rolldown';

const here = import.meta.dirname;
const FAST = ['-O3', '-march=native'];
const CVODE = ['cvode', 'nvecserial', 'sunmatrixdense', 'sunlinsoldense', 'sunnonlinsolfixedpoint'];

/** Builds everybody who takes part into a folder. Ends the program when something that it needs is not there. */
export async function buildAll(work: string): Promise<void> {
  await build({
    input: join(here, 'ours.ts'),
    platform: 'node',
    logLevel: 'silent',
    output: { file: join(work, 'ours.mjs') },
  });
  const source = (name: string): string => join(here, name);
  const to = (name: string): readonly string[] => ['-o', join(work, name)];
  try {
    const libraries = CVODE.map((name) => `-lsundials_${name}`);
    const c = [...FAST, '-std=gnu11', '-flto'];
    run('gcc', [...c, ...to('rival'), source('rival.c'), source('model.c'), ...libraries, '-lm']);
    run('gcc', [...FAST, '-std=gnu11', '-shared', '-fPIC', ...to('model.so'), source('model.c'), '-lm']);
    run('gcc', ['-O2', '-march=native', '-fno-tree-vectorize', ...to('peak'), source('peak.c')]);
    run('g++', ['-O2', '-std=c++17', ...to('count'), source('count.cc')]);
  } catch {
    console.error("bench: the C rivals do not build; they need gcc, g++ and Debian's libsundials-dev");
    process.exit(2);
  }
}

function run(program: string, args: readonly string[]): void {
  execFileSync(program, args, { stdio: ['ignore', 'ignore', 'inherit'] });
}
