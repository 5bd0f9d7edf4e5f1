import { spawn } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { BuiltProgram, OCHRE } from './program.ts';

let program: BuiltProgram;
let folder: string;
beforeAll(async () => {
  program = await BuiltProgram.make();
  chmodSync(program.file, 0o755);
});
afterAll(() => program.remove());
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'lastinch-cli-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const at = (name: string): string => join(folder, name);
const written = (name: string, bytes: string | Buffer): string => {
  writeFileSync(at(name), bytes);
  return at(name);
};
const ochre = (): string => readFileSync(OCHRE, 'utf8');

describe('lastinch open', () => {
  beforeAll(() => {
    // The workbench is built and tested elsewhere; here any page stands for it.
    const home = join(program.file, '../workbench');
    mkdirSync(home, { recursive: true });
    if (!existsSync(join(home, 'index.html'))) writeFileSync(join(home, 'index.html'), '<!doctype html>');
  });

  const opened = (words: readonly string[]) => {
    const child = spawn(process.execPath, [program.file, 'open', ...words], {
      env: { PATH: process.env.PATH, LANG: 'C.UTF-8' },
    });
    let out = '';
    const address = new Promise<string>((done, failed) => {
      child.stdout.on('data', (part: Buffer) => {
        out += part.toString();
        const found = /Workbench: (http:\S+)/.exec(out)?.[1];
        if (found !== undefined) done(found);
      });
      child.on('close', () => failed(new Error(`ended before it served: ${out}`)));
    });
    const stop = async (): Promise<number | null> => {
      const closed = new Promise<number | null>((done) => child.on('close', done));
      child.kill('SIGINT');
      return closed;
    };
    return { address, stop, out: () => out };
  };

  it('prints the verdict, serves page and rig file, saves, and stops when told to', async () => {
    const file = written('öl.rig.yaml', ochre());
    const workbench = opened([file, '--no-open', '--port', '0']);
    const address = await workbench.address;
    expect(workbench.out()).toContain('STATICS');
    expect(await (await fetch(address)).text()).toContain('<!doctype html>');
    const read = await fetch(`${address}rig`);
    const text = await read.text();
    expect(text).toBe(ochre());
    const changed = text.replace('name: Ochre', 'name: Ochre the second');
    const saved = await fetch(`${address}rig`, {
      method: 'PUT',
      body: changed,
      headers: { 'If-Match': read.headers.get('ETag') ?? '' },
    });
    expect(saved.status).toBe(204);
    expect(readFileSync(file, 'utf8')).toBe(changed);
    expect(await workbench.stop()).toBe(0);
  });

  it('takes the next port when the usual one is taken, and no other one than was asked for', async () => {
    const first = opened([OCHRE, '--no-open']);
    const second = opened([OCHRE, '--no-open']);
    const [one, two] = await Promise.all([first.address, second.address]);
    expect(one).not.toBe(two);
    await Promise.all([first.stop(), second.stop()]);

    const taken = createServer().listen(0, '127.0.0.1');
    await new Promise((done) => taken.once('listening', done));
    const { port } = taken.address() as AddressInfo;
    const ended = await program.run(['open', OCHRE, '--no-open', '--port', `${port}`]);
    expect(ended.code).toBe(2);
    expect(ended.err).toContain(`${port}`);
    expect(ended.err).toMatch(/in use/);
    taken.close();
  });
});
