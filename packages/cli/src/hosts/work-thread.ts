/** What runs in each worker thread of the command line; built as a file of its own beside the program. */
import { parentPort } from 'node:worker_threads';
import { serveWork } from '@lastinch/core';

const port = parentPort;
if (port === null) throw new Error('this file is started by the program, in a worker thread');
port.on(
  'message',
  serveWork((reply, moved) => port.postMessage(reply, [...moved])),
);
