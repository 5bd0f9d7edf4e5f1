/// <reference lib="webworker" />
import { type MeshAsk, serveMesh } from '@lastinch/mesh';

declare const self: DedicatedWorkerGlobalScope;

const serve = serveMesh((reply, moved) => self.postMessage(reply, [...moved]));

self.onmessage = ({ data }: MessageEvent<MeshAsk>): void => serve(data);
