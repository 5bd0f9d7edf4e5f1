import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { type ServedWorkbench, serveWorkbench } from '../src/hosts/workbench-server.ts';

let folder: string;
let served: ServedWorkbench;
const rig = (): string => join(folder, 'öl rig.yaml');

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'lastinch-server-'));
  mkdirSync(join(folder, 'dist/assets'), { recursive: true });
  writeFileSync(join(folder, 'dist/index.html'), '<!doctype html>');
  writeFileSync(join(folder, 'dist/assets/a.js'), 'export {};');
  writeFileSync(rig(), 'name: one # kept\n');
  served = await serveWorkbench(join(folder, 'dist'), rig(), 0);
});
afterEach(async () => {
  await served.close();
  rmSync(folder, { recursive: true, force: true });
});

const get = (path: string, init?: RequestInit) => fetch(new URL(path, served.address), init);
const put = (body: string | Uint8Array<ArrayBuffer>, headers: Record<string, string>) =>
  get('rig', { method: 'PUT', body, headers });
const onDisk = (): string => readFileSync(rig(), 'utf8');

/** A request with a free choice of path and headers, which `fetch` would tidy up. */
const raw = (path: string, headers: Record<string, string> = {}): Promise<number> =>
  new Promise((done, failed) => {
    const { port } = new URL(served.address);
    request({ host: '127.0.0.1', port, path, headers }, (answer) => {
      answer.resume();
      done(answer.statusCode ?? 0);
    })
      .on('error', failed)
      .end();
  });

it('is reached on this machine only', () => {
  expect(served.address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/);
});

it('serves the page under a policy that lets nothing in from elsewhere', async () => {
  const answer = await get('/');
  expect(answer.status).toBe(200);
  expect(await answer.text()).toBe('<!doctype html>');
  const policy = answer.headers.get('Content-Security-Policy') ?? '';
  expect(policy).toContain("default-src 'none'");
  expect(policy).toContain("frame-ancestors 'none'");
  // The compiled ride kernel needs this one leave; it lets no script in.
  expect(policy.replace("'wasm-unsafe-eval'", '')).not.toMatch(/unsafe|\*|https?:/);
  expect((await get('/assets/a.js')).headers.get('Content-Type')).toContain('text/javascript');
});

it('gives the rig file with its name and entity tag', async () => {
  const answer = await get('rig');
  expect(await answer.text()).toBe('name: one # kept\n');
  expect(decodeURIComponent(answer.headers.get('X-Rig-Name') ?? '')).toBe('öl rig.yaml');
  expect(answer.headers.get('ETag')).toMatch(/^"[0-9a-f]+"$/);
});

it('saves with the tag that was read, again and again', async () => {
  const tag = (await get('rig')).headers.get('ETag') ?? '';
  const first = await put('name: two\n', { 'If-Match': tag });
  expect(first.status).toBe(204);
  expect(onDisk()).toBe('name: two\n');
  const second = await put('name: three\n', { 'If-Match': first.headers.get('ETag') ?? '' });
  expect(second.status).toBe(204);
  expect(onDisk()).toBe('name: three\n');
});

it('refuses to save over a file that changed on disk', async () => {
  const tag = (await get('rig')).headers.get('ETag') ?? '';
  writeFileSync(rig(), 'name: theirs\n');
  expect((await put('name: ours\n', { 'If-Match': tag })).status).toBe(412);
  expect(onDisk()).toBe('name: theirs\n');
});

it('refuses to save without a tag, too much, or what is no text', async () => {
  const tag = (await get('rig')).headers.get('ETag') ?? '';
  expect((await put('x', {})).status).toBe(428);
  expect((await put('x'.repeat(1_000_001), { 'If-Match': tag })).status).toBe(413);
  expect((await put(new Uint8Array([0xe9, 0x20]), { 'If-Match': tag })).status).toBe(415);
  expect(onDisk()).toBe('name: one # kept\n');
});

it('answers no foreign page and no foreign name', async () => {
  const tag = (await get('rig')).headers.get('ETag') ?? '';
  expect((await put('x', { 'If-Match': tag, Origin: 'http://elsewhere.example' })).status).toBe(403);
  expect(await raw('/rig', { Host: 'elsewhere.example' })).toBe(403);
  expect(onDisk()).toBe('name: one # kept\n');
});

it.each(['/../öl rig.yaml', '/%2e%2e/%C3%B6l%20rig.yaml', '/assets/../../x', '/%', '/gone.js', '/assets'])(
  'serves nothing for %s',
  async (path) => {
    expect([400, 404]).toContain(await raw(encodeURI(path).replaceAll('%25', '%')));
  },
);

it('says when the file is gone, and saves nothing in its place', async () => {
  const tag = (await get('rig')).headers.get('ETag') ?? '';
  rmSync(rig());
  expect((await get('rig')).status).toBe(409);
  expect((await put('x', { 'If-Match': tag })).status).toBe(409);
});

it('fails to listen on a port that is taken', async () => {
  const port = Number(new URL(served.address).port);
  await expect(serveWorkbench(join(folder, 'dist'), rig(), port)).rejects.toMatchObject({
    code: 'EADDRINUSE',
  });
});
