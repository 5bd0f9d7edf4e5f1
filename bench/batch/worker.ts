/** One of the worker threads of the bench. */
import { parentPort } from 'node:worker_threads';
import { serveWork } from '@lastinch/core';

const port = parentPort;
if (port === null) throw new Error('started by program.ts, in a worker thread');
port.on(
  'message',
  serveWork((reply, moved) => port.postMessage(reply, [...moved])),
);
