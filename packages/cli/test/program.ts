import { spawn } from 'node:child_process';
import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { build } from 'vite';

const HOUSE = resolve(import.meta.dirname, '../../..');
export const OCHRE = join(HOUSE, 'examples/ochre/ochre.rig.yaml');

/** Any control character but the end of a line. */
export const CONTROL = /[^\P{Cc}\n]/u;

/** The program built into a temporary folder, with nothing beside it: what a user has after copying it. */
export class BuiltProgram {
  private constructor(private readonly folder: string) {}

  static async make(): Promise<BuiltProgram> {
    const folder = mkdtempSync(join(tmpdir(), 'lastinch-built-'));
    await build({
      configFile: resolve(import.meta.dirname, '../vite.config.ts'),
      build: { outDir: folder, emptyOutDir: true },
      logLevel: 'silent',
    });
    chmodSync(folder, 0o755); // a test runs it as somebody with fewer rights
    return new BuiltProgram(folder);
  }

  get file(): string {
    return join(this.folder, 'lastinch.js');
  }

  /** Runs it to its end. */
  run(words: readonly string[], options: RunOptions = {}): Promise<Ended> {
    const child = spawn(process.execPath, [this.file, ...words], {
      cwd: options.cwd ?? tmpdir(),
      env: { PATH: process.env.PATH, LANG: 'C.UTF-8', ...options.env },
      ...(options.uid === undefined ? {} : { uid: options.uid, gid: options.uid }),
    });
    child.stdin.on('error', () => {});
    child.stdin.end(options.input ?? '');
    const out: Buffer[] = [];
    const err: Buffer[] = [];
    child.stdout.on('data', (part: Buffer) => out.push(part));
    child.stderr.on('data', (part: Buffer) => err.push(part));
    return new Promise((done, failed) => {
      child.on('error', failed);
      child.on('close', (code) =>
        done({ code, out: Buffer.concat(out).toString('utf8'), err: Buffer.concat(err).toString('utf8') }),
      );
    });
  }

  remove(): void {
    rmSync(this.folder, { recursive: true, force: true });
  }
}

export interface RunOptions {
  readonly input?: string | Buffer;
  readonly cwd?: string;
  readonly env?: Readonly<Record<string, string>>;
  readonly uid?: number;
}

export interface Ended {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}
