/** One solid, and one file of it, in a process of its own: what it took, as JSON. */
import { fileOf, plateFor, type SolidRequest, solidOf, threadNamed } from '@lastinch/mesh';

const [kind, cell] = [process.argv[2], Number(process.argv[3]) / 1000];
const thread = threadNamed('M10');
if (thread === null) throw new Error('no M10');
const seat = { kind: 'nut', thread } as const;
const request: SolidRequest = {
  body: {
    height: 0.07,
    radius: { at: [0, 0.07], value: [0.03, 0.03] },
    bore: 0,
    skin: 0,
    density: { at: [0, 0.07], value: [0.5, 0.3] },
  },
  cell,
  plate: plateFor(seat),
  seat,
  cap: 0,
  vents: null,
};
const before = process.cpuUsage();
const start = performance.now();
const made = solidOf(request);
if (!made.ok) throw new Error(JSON.stringify(made.problems));
const { mesh, figures } = made.value;
if (kind === '3mf' || kind === 'stl') fileOf(kind, 'stop', mesh);
const { user, system } = process.cpuUsage(before);
console.log(
  JSON.stringify({
    triangles: figures.triangles,
    seconds: (performance.now() - start) / 1000,
    processorSeconds: (user + system) / 1e6,
    peakMegabytes: process.resourceUsage().maxRSS / 1000,
    worst: figures.worst,
  }),
);
