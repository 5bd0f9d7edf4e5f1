/**
 * `npm run -s bench:front`: the front of many points in three and six objectives, kept one by one and made in one go, on
 * one core; clouds in a cube, of which few stand, and on a sphere, of which all do. For comparison the plain list: every
 * newcomer is held against all that stand.
 */
import { beats, FrontArchive, frontOf, type Point } from '@lastinch/core/choose';

const ROUNDS = 3;
/** Past this many points the plain list takes minutes on a sphere. */
const MOST_FOR_LIST = 20_000;

let state = 1;
const random = (): number => {
  state = (state * 48_271) % 2_147_483_647;
  return state / 2_147_483_647;
};
const cube = (width: number): Point => Array.from({ length: width }, random);
/** Evenly over the octant that faces the origin's far side: none beats another. */
function sphere(width: number): Point {
  const normal = (): number => Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
  const point = Array.from({ length: width }, normal);
  const length = Math.hypot(...point);
  return point.map((value) => -Math.abs(value) / length);
}

function plainList(points: readonly Point[]): number {
  let standing: Point[] = [];
  for (const point of points) {
    if (standing.some((other) => beats(other, point))) continue;
    standing = standing.filter((other) => !beats(point, other));
    standing.push(point);
  }
  return standing.length;
}

function oneByOne(points: readonly Point[]): number {
  const archive = new FrontArchive<number>();
  points.forEach((point, i) => {
    archive.offer(point, i);
  });
  return archive.size;
}

function best(work: () => number): { readonly ms: number; readonly stand: number } {
  let ms = Number.POSITIVE_INFINITY;
  let stand = 0;
  for (let round = 0; round < ROUNDS; round += 1) {
    const start = performance.now();
    stand = work();
    ms = Math.min(ms, performance.now() - start);
  }
  return { ms, stand };
}

console.log(`front of many points, best of ${ROUNDS}, one core [ms]`);
console.log('cloud   objectives  points  stand  one by one  in one go  plain list');
for (const [name, cloud] of [
  ['cube', cube],
  ['sphere', sphere],
] as const)
  for (const width of [3, 6])
    for (const count of [5_000, 20_000, 50_000]) {
      const points = Array.from({ length: count }, () => cloud(width));
      const single = best(() => oneByOne(points));
      const whole = best(() => frontOf(points).length);
      const list = count <= MOST_FOR_LIST ? best(() => plainList(points)) : null;
      if (whole.stand !== single.stand || (list !== null && list.stand !== single.stand))
        throw new Error('the three ways disagree about who stands');
      const shown = (ms: number | undefined): string => (ms === undefined ? '-' : ms.toFixed(0)).padStart(10);
      console.log(
        `${name.padEnd(8)}${String(width).padStart(10)}${String(count).padStart(8)}${String(single.stand).padStart(7)}` +
          `  ${shown(single.ms)} ${shown(whole.ms)}  ${shown(list?.ms)}`,
      );
    }
