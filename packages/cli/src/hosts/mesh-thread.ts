/** Makes solids in a worker thread of the command line; built as a file of its own beside the program. */
import { parentPort } from 'node:worker_threads';
import { type MeshAsk, type MeshReply, serveMesh } from '@lastinch/mesh';

const port = parentPort;
if (port === null) throw new Error('this file is started by the program, in a worker thread');
const serve = serveMesh((reply: MeshReply, moved) => port.postMessage(reply, [...moved]));
port.on('message', (ask: MeshAsk) => serve(ask));
