/// <reference lib="webworker" />
import { serveWork, type WorkAsk } from '@lastinch/core';

declare const self: DedicatedWorkerGlobalScope;

const serve = serveWork((reply, moved) => self.postMessage(reply, [...moved]));

self.onmessage = ({ data }: MessageEvent<WorkAsk>): void => serve(data);
