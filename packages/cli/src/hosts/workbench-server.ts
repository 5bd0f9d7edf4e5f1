import { readFile } from 'node:fs/promises';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { basename, extname, join, normalize, sep } from 'node:path';
import { problemText } from '@lastinch/core';
import { readTextFile, replaceFile } from './files.ts';

/**
 * Nothing from elsewhere, nothing inline, no evaluated text. The page says the same about itself; the header also
 * holds for what a page cannot say: who may frame it.
 */
const POLICY = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
  '.wasm': 'application/wasm',
  '.woff2': 'font/woff2',
  '.map': 'application/json',
  '.txt': 'text/plain; charset=utf-8',
};

const LARGEST_BODY = 1_000_000;

export interface ServedWorkbench {
  readonly address: string;
  readonly close: () => Promise<void>;
}

/**
 * Serves the built workbench and one rig file on this machine only.
 *
 * - `GET /rig` answers with the text, its name in `X-Rig-Name` (percent-encoded) and its entity tag;
 * - `PUT /rig` with `If-Match` replaces the file in one step: 412 when it changed on disk meanwhile, 428 without
 *   `If-Match`;
 * - everything else is a file of the workbench.
 *
 * @param port – 0 takes any free one
 * @throws the error of `listen`, for example `EADDRINUSE`
 */
export async function serveWorkbench(
  folder: string,
  rigFile: string,
  port: number,
): Promise<ServedWorkbench> {
  const server = createServer((request, response) => {
    answer(request, response, folder, rigFile, server).catch((error: unknown) => {
      if (!response.headersSent) say(response, 500, `Not answered: ${(error as Error).message}`);
      else response.destroy();
    });
  });
  await new Promise<void>((done, failed) => {
    server.once('error', failed);
    server.listen(port, '127.0.0.1', () => {
      server.off('error', failed);
      done();
    });
  });
  return {
    address: `http://127.0.0.1:${portOf(server)}/`,
    close: () =>
      new Promise((done) => {
        server.close(() => done());
        server.closeAllConnections();
      }),
  };
}

const portOf = (server: Server): number => (server.address() as AddressInfo).port;

async function answer(
  request: IncomingMessage,
  response: ServerResponse,
  folder: string,
  rigFile: string,
  server: Server,
): Promise<void> {
  response.setHeader('Content-Security-Policy', POLICY);
  response.setHeader('X-Content-Type-Options', 'nosniff');
  response.setHeader('Referrer-Policy', 'no-referrer');
  response.setHeader('Cross-Origin-Resource-Policy', 'same-origin');
  response.setHeader('Cache-Control', 'no-store');

  // A name that somebody lets point to 127.0.0.1 must not reach the rig file from his own page.
  const own = [`127.0.0.1:${portOf(server)}`, `localhost:${portOf(server)}`];
  if (!own.includes(request.headers.host ?? '')) return say(response, 403, 'Asked for under a foreign name.');
  const { origin } = request.headers;
  if (origin !== undefined && !own.some((host) => origin === `http://${host}`))
    return say(response, 403, 'Asked for by a foreign page.');

  let path: string;
  try {
    path = decodeURIComponent(new URL(request.url ?? '/', 'http://127.0.0.1').pathname);
  } catch {
    return say(response, 400, 'Not an address.');
  }
  const reading = request.method === 'GET' || request.method === 'HEAD';
  if (path === '/rig') {
    if (reading) return giveRig(response, rigFile);
    if (request.method === 'PUT') return takeRig(request, response, rigFile);
    response.setHeader('Allow', 'GET, HEAD, PUT');
    return say(response, 405, 'The rig file can be read (GET) and saved (PUT).');
  }
  if (!reading) {
    response.setHeader('Allow', 'GET, HEAD');
    return say(response, 405, 'The workbench can only be read.');
  }
  return giveFile(response, folder, path);
}

function giveRig(response: ServerResponse, rigFile: string): void {
  const read = readTextFile(rigFile);
  if (!read.ok) {
    say(response, 409, read.problems.map(problemText).join('\n'));
    return;
  }
  response.setHeader('X-Rig-Name', encodeURIComponent(basename(rigFile)));
  response.setHeader('ETag', read.value.etag);
  response.setHeader('Content-Type', 'application/yaml; charset=utf-8');
  response.end(read.value.text);
}

async function takeRig(request: IncomingMessage, response: ServerResponse, rigFile: string): Promise<void> {
  const knownAs = request.headers['if-match'];
  if (knownAs === undefined)
    return say(response, 428, 'Say with If-Match which text this one was made from.');
  const parts: Buffer[] = [];
  let length = 0;
  for await (const part of request) {
    length += (part as Buffer).length;
    if (length > LARGEST_BODY) {
      response.setHeader('Connection', 'close');
      return say(response, 413, `A rig file has at most ${LARGEST_BODY / 1_000_000} MB.`);
    }
    parts.push(part as Buffer);
  }
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(Buffer.concat(parts));
  } catch {
    return say(response, 415, 'A rig file is UTF-8 text.');
  }
  if (text.includes('\0')) return say(response, 415, 'A rig file is UTF-8 text.');
  const written = replaceFile(rigFile, text, knownAs);
  if (!written.ok) return say(response, 409, written.problems.map(problemText).join('\n'));
  if (written.value === null) return say(response, 412, 'The file changed on disk since it was read.');
  response.setHeader('ETag', written.value);
  response.writeHead(204).end();
}

async function giveFile(response: ServerResponse, folder: string, path: string): Promise<void> {
  const file = normalize(join(folder, path.endsWith('/') ? `${path}index.html` : path));
  if (!file.startsWith(normalize(folder) + sep) || path.includes('\0'))
    return say(response, 404, 'No such page.');
  let bytes: Buffer;
  try {
    bytes = await readFile(file);
  } catch {
    return say(response, 404, 'No such page.');
  }
  response.setHeader('Content-Type', TYPES[extname(file)] ?? 'application/octet-stream');
  response.end(bytes);
}

function say(response: ServerResponse, status: number, text: string): void {
  response.setHeader('Content-Type', 'text/plain; charset=utf-8');
  response.writeHead(status).end(`${text}\n`);
}
