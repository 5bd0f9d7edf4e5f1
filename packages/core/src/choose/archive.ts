import { isAlike, isNowhereWorse, type Point } from './dominance.ts';

/** What a leaf holds before it is split, and into how many. Decides the time only. */
const LEAF = 24;
const BRANCHES = 6;

interface Entry<T> {
  readonly point: Point;
  readonly what: T;
}

/** A box around points that stand near each other; either a leaf with entries or a branch with nodes. */
interface Node<T> {
  /** Corners of a box around all that is or was below. */
  readonly low: number[];
  readonly high: number[];
  entries: Entry<T>[];
  nodes: Node<T>[] | null;
}

/**
 * The points that none of those offered beats, kept while they come in one by one. A tree of boxes: where a box lies
 * wholly beside a point, nothing in it needs to be looked at.
 *
 * @invariant whatever the order of the offers, the same points are left
 * @source ND-Tree: Jaszkiewicz and Lust, IEEE Trans. Evol. Comput. 22 (2018) 778 (abstract read)
 */
export class FrontArchive<T> {
  #root: Node<T> | null = null;
  #size = 0;

  get size(): number {
    return this.#size;
  }

  /** Whether a point of the archive is nowhere worse and somewhere better. */
  beats(point: Point): boolean {
    return this.#root !== null && nodeBeats(this.#root, point);
  }

  /** Takes a point in, and what it beats out. False when it is beaten itself; points alike in everything all stay. */
  offer(point: Point, what: T): boolean {
    if (this.beats(point)) return false;
    if (this.#root !== null) {
      const gone = takeOut(this.#root, point);
      this.#size -= gone;
      if (this.#size === 0) this.#root = null;
    }
    this.#size += 1;
    this.#root ??= { low: [...point], high: [...point], entries: [], nodes: null };
    insert(this.#root, { point, what });
    return true;
  }

  /** What was offered with the points that are left, in no particular order. */
  entries(): T[] {
    const all: T[] = [];
    const collect = (node: Node<T>): void => {
      for (const { what } of node.entries) all.push(what);
      for (const below of node.nodes ?? []) collect(below);
    };
    if (this.#root !== null) collect(this.#root);
    return all;
  }
}

function nodeBeats<T>(node: Node<T>, point: Point): boolean {
  if (!isNowhereWorse(node.low, point)) return false;
  // All that is below is as good as the far corner: no empty box is ever kept.
  if (isNowhereWorse(node.high, point) && !isAlike(node.high, point)) return true;
  if (node.nodes !== null) {
    for (const below of node.nodes) if (nodeBeats(below, point)) return true;
    return false;
  }
  for (const { point: other } of node.entries)
    if (isNowhereWorse(other, point) && !isAlike(other, point)) return true;
  return false;
}

/** Takes out what a point beats, and says how many that were. */
function takeOut<T>(node: Node<T>, point: Point): number {
  if (!isNowhereWorse(point, node.high)) return 0;
  if (node.nodes !== null) {
    let gone = 0;
    for (const below of node.nodes) gone += takeOut(below, point);
    if (gone > 0) node.nodes = node.nodes.filter(({ entries, nodes }) => (nodes ?? entries).length > 0);
    return gone;
  }
  const before = node.entries.length;
  node.entries = node.entries.filter(
    ({ point: other }) => !isNowhereWorse(point, other) || isAlike(point, other),
  );
  return before - node.entries.length;
}

function insert<T>(top: Node<T>, entry: Entry<T>): void {
  let node = top;
  for (;;) {
    widen(node, entry.point);
    if (node.nodes === null) break;
    node = nearest(node, node.nodes, entry.point);
  }
  node.entries.push(entry);
  if (node.entries.length > LEAF) split(node);
}

function widen<T>({ low, high }: Node<T>, point: Point): void {
  for (let k = 0; k < point.length; k += 1) {
    if (point[k] < low[k]) low[k] = point[k];
    if (point[k] > high[k]) high[k] = point[k];
  }
}

/** The node whose middle lies nearest, with each objective as a share of the range of the box around them. */
function nearest<T>({ low, high }: Node<T>, nodes: readonly Node<T>[], point: Point): Node<T> {
  let best = nodes[0];
  let least = Number.POSITIVE_INFINITY;
  for (const node of nodes) {
    let distance = 0;
    for (let k = 0; k < point.length; k += 1) {
      const off = (point[k] - (node.low[k] + node.high[k]) / 2) / (high[k] - low[k] || 1);
      distance += off * off;
    }
    if (distance < least) {
      least = distance;
      best = node;
    }
  }
  return best;
}

/** Makes a branch of a full leaf: each new node starts with the entry farthest from those before. */
function split<T>(node: Node<T>): void {
  const { entries, low, high } = node;
  const farness = new Float64Array(entries.length).fill(Number.POSITIVE_INFINITY);
  const nodes: Node<T>[] = [];
  let start = 0;
  while (nodes.length < BRANCHES) {
    const { point } = entries[start];
    nodes.push({ low: [...point], high: [...point], entries: [], nodes: null });
    let farthest = 0;
    for (let i = 0; i < entries.length; i += 1) {
      let distance = 0;
      for (let k = 0; k < point.length; k += 1) {
        const off = (entries[i].point[k] - point[k]) / (high[k] - low[k] || 1);
        distance += off * off;
      }
      farness[i] = Math.min(farness[i], distance);
      if (farness[i] > farness[farthest]) farthest = i;
    }
    // All the rest are alike: they stay in one leaf, however many they are.
    if (farness[farthest] === 0) break;
    start = farthest;
  }
  if (nodes.length < 2) return;
  for (const entry of entries) {
    const home = nearest(node, nodes, entry.point);
    widen(home, entry.point);
    home.entries.push(entry);
  }
  node.entries = [];
  node.nodes = nodes.filter((below) => below.entries.length > 0);
}
