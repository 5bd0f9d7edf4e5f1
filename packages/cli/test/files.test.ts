import {
  chmodSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Result } from '@lastinch/core';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { readBeside, readTextFile, replaceFile, writeNewFile } from '../src/hosts/files.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'lastinch-files-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const at = (name: string): string => join(folder, name);
const must = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
};
const codes = (result: Result<unknown>): string[] =>
  result.ok ? [] : result.problems.map((problem) => problem.code);

const written = (name: string, bytes: string | Buffer): string => {
  writeFileSync(at(name), bytes);
  return at(name);
};

describe('reading', () => {
  it('gives the text as it is, byte order mark and line ends included', () => {
    writeFileSync(at('rig.yaml'), '\ufeffa: 1\r\n');
    expect(must(readTextFile(at('rig.yaml'))).text).toBe('\ufeffa: 1\r\n');
  });

  it.each<[string, () => string, string]>([
    ['a missing file', () => at('gone.yaml'), 'file-not-found'],
    ['a path through a file', () => join(written('f', ''), 'x'), 'file-not-found'],
    ['a name without end', () => at('x'.repeat(5000)), 'file-not-found'],
    ['a folder', () => folder, 'file-is-folder'],
    ['a binary file', () => written('b', Buffer.from([65, 0, 66])), 'file-not-text'],
    ['another encoding', () => written('l', Buffer.from([0xe9, 0x20])), 'file-not-text'],
    ['ten megabytes', () => written('big', 'a'.repeat(10_000_000)), 'file-too-large'],
    ['a device without end', () => '/dev/zero', 'file-too-large'],
  ])('refuses %s', (_what, path, code) => {
    expect(codes(readTextFile(path()))).toEqual([code]);
  });
});

describe('tables beside a rig file', () => {
  it('are read from its own folder and below', () => {
    mkdirSync(at('tables'));
    writeFileSync(at('tables/stop.csv'), 'crush,force\n');
    expect(must(readBeside(at('rig.yaml'))('tables/stop.csv'))).toBe('crush,force\n');
  });

  it.each(['/etc/hostname', '../elsewhere.csv', '.'])('are not read from %s', (path) => {
    const home = at('home');
    mkdirSync(home);
    writeFileSync(at('elsewhere.csv'), 'x');
    expect(codes(readBeside(join(home, 'rig.yaml'))(path))).toEqual(['file-not-found']);
  });

  it('are not read through a link that leads out', () => {
    const home = at('home');
    mkdirSync(home);
    writeFileSync(at('elsewhere.csv'), 'x');
    symlinkSync(at('elsewhere.csv'), join(home, 'in.csv'));
    expect(codes(readBeside(join(home, 'rig.yaml'))('in.csv'))).toEqual(['file-not-found']);
  });
});

describe('writing', () => {
  it('never overwrites with a new file', () => {
    must(writeNewFile(at('rig.yaml'), 'one'));
    expect(codes(writeNewFile(at('rig.yaml'), 'two'))).toEqual(['file-exists']);
    expect(readFileSync(at('rig.yaml'), 'utf8')).toBe('one');
  });

  it('replaces a file in one step and leaves nothing beside it', () => {
    writeFileSync(at('rig.yaml'), 'one');
    chmodSync(at('rig.yaml'), 0o640);
    const known = must(readTextFile(at('rig.yaml'))).etag;
    const tag = must(replaceFile(at('rig.yaml'), 'two ±', known));
    expect(readFileSync(at('rig.yaml'), 'utf8')).toBe('two ±');
    expect(tag).toBe(must(readTextFile(at('rig.yaml'))).etag);
    expect(statSync(at('rig.yaml')).mode & 0o777).toBe(0o640);
    expect(readdirSync(folder)).toEqual(['rig.yaml']);
  });

  it('does not touch a file that somebody else changed meanwhile', () => {
    writeFileSync(at('rig.yaml'), 'one');
    const known = must(readTextFile(at('rig.yaml'))).etag;
    writeFileSync(at('rig.yaml'), 'theirs');
    expect(must(replaceFile(at('rig.yaml'), 'ours', known))).toBeNull();
    expect(readFileSync(at('rig.yaml'), 'utf8')).toBe('theirs');
    expect(readdirSync(folder)).toEqual(['rig.yaml']);
  });

  it('follows a link to the file and keeps the link', () => {
    writeFileSync(at('real.yaml'), 'one');
    symlinkSync(at('real.yaml'), at('link.yaml'));
    const known = must(readTextFile(at('link.yaml'))).etag;
    must(replaceFile(at('link.yaml'), 'two', known));
    expect(lstatSync(at('link.yaml')).isSymbolicLink()).toBe(true);
    expect(readFileSync(at('real.yaml'), 'utf8')).toBe('two');
  });
});
