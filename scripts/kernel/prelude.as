// What the source of the ride kernel finds when it is compiled by AssemblyScript, in place of memory.ts and rows.ts.

// A place is a number of eight bytes. The memory begins at zero and is handed in by the host.
@unmanaged class Memory {
  @inline @operator("[]") get(place: i32): f64 {
    return load<f64>(changetype<usize>(this) + (<usize>place << 3));
  }
  @inline @operator("[]=") set(place: i32, value: f64): void {
    store<f64>(changetype<usize>(this) + (<usize>place << 3), value);
  }
}

@inline function whole(x: f64): i32 {
  return <i32>x;
}

@inline function placeAt(m: Memory, place: i32): i32 {
  // Added to this number, a whole one stands in the low bits.
  return <i32>reinterpret<i64>(m[place] + 6755399441055744.0);
}

@inline function addressOf(m: Memory, place: i32): usize {
  return changetype<usize>(m) + (<usize>place << 3);
}

// Two numbers of a row at once, four in a turn; every operation on its own, so that results are those of rows.ts to the
// last bit.
@inline function leanRow(m: Memory, to: i32, from: i32, by: f64, slope: i32, size: i32): void {
  const byTwo = f64x2.splat(by);
  const toAt = addressOf(m, to);
  const fromAt = addressOf(m, from);
  const slopeAt = addressOf(m, slope);
  const end = <usize>size << 3;
  for (let i: usize = 0; i < end; i += 32) {
    v128.store(toAt + i, f64x2.add(v128.load(fromAt + i), f64x2.mul(byTwo, v128.load(slopeAt + i))));
    v128.store(toAt + i, f64x2.add(v128.load(fromAt + i, 16), f64x2.mul(byTwo, v128.load(slopeAt + i, 16))), 16);
  }
}

@inline function leanOnTwo(
  m: Memory, to: i32, from: i32, by: f64, a: f64, p: i32, b: f64, q: i32, size: i32,
): void {
  const aTwo = f64x2.splat(a);
  const bTwo = f64x2.splat(b);
  const byTwo = f64x2.splat(by);
  const toAt = addressOf(m, to);
  const fromAt = addressOf(m, from);
  const pAt = addressOf(m, p);
  const qAt = addressOf(m, q);
  const end = <usize>size << 3;
  for (let i: usize = 0; i < end; i += 32) {
    let sum = f64x2.mul(aTwo, v128.load(pAt + i));
    sum = f64x2.add(sum, f64x2.mul(bTwo, v128.load(qAt + i)));
    v128.store(toAt + i, f64x2.add(v128.load(fromAt + i), f64x2.mul(byTwo, sum)));
    let more = f64x2.mul(aTwo, v128.load(pAt + i, 16));
    more = f64x2.add(more, f64x2.mul(bTwo, v128.load(qAt + i, 16)));
    v128.store(toAt + i, f64x2.add(v128.load(fromAt + i, 16), f64x2.mul(byTwo, more)), 16);
  }
}

@inline function leanOnThree(
  m: Memory, to: i32, from: i32, by: f64, a: f64, p: i32, b: f64, q: i32, c: f64, r: i32, size: i32,
): void {
  const aTwo = f64x2.splat(a);
  const bTwo = f64x2.splat(b);
  const cTwo = f64x2.splat(c);
  const byTwo = f64x2.splat(by);
  const toAt = addressOf(m, to);
  const fromAt = addressOf(m, from);
  const pAt = addressOf(m, p);
  const qAt = addressOf(m, q);
  const rAt = addressOf(m, r);
  const end = <usize>size << 3;
  for (let i: usize = 0; i < end; i += 32) {
    let sum = f64x2.mul(aTwo, v128.load(pAt + i));
    sum = f64x2.add(sum, f64x2.mul(bTwo, v128.load(qAt + i)));
    sum = f64x2.add(sum, f64x2.mul(cTwo, v128.load(rAt + i)));
    v128.store(toAt + i, f64x2.add(v128.load(fromAt + i), f64x2.mul(byTwo, sum)));
    let more = f64x2.mul(aTwo, v128.load(pAt + i, 16));
    more = f64x2.add(more, f64x2.mul(bTwo, v128.load(qAt + i, 16)));
    more = f64x2.add(more, f64x2.mul(cTwo, v128.load(rAt + i, 16)));
    v128.store(toAt + i, f64x2.add(v128.load(fromAt + i, 16), f64x2.mul(byTwo, more)), 16);
  }
}

@inline function leanOnFour(
  m: Memory, to: i32, from: i32, by: f64, a: f64, p: i32, b: f64, q: i32, c: f64, r: i32, d: f64, s: i32, size: i32,
): void {
  const aTwo = f64x2.splat(a);
  const bTwo = f64x2.splat(b);
  const cTwo = f64x2.splat(c);
  const dTwo = f64x2.splat(d);
  const byTwo = f64x2.splat(by);
  const toAt = addressOf(m, to);
  const fromAt = addressOf(m, from);
  const pAt = addressOf(m, p);
  const qAt = addressOf(m, q);
  const rAt = addressOf(m, r);
  const sAt = addressOf(m, s);
  const end = <usize>size << 3;
  for (let i: usize = 0; i < end; i += 32) {
    let sum = f64x2.mul(aTwo, v128.load(pAt + i));
    sum = f64x2.add(sum, f64x2.mul(bTwo, v128.load(qAt + i)));
    sum = f64x2.add(sum, f64x2.mul(cTwo, v128.load(rAt + i)));
    sum = f64x2.add(sum, f64x2.mul(dTwo, v128.load(sAt + i)));
    v128.store(toAt + i, f64x2.add(v128.load(fromAt + i), f64x2.mul(byTwo, sum)));
    let more = f64x2.mul(aTwo, v128.load(pAt + i, 16));
    more = f64x2.add(more, f64x2.mul(bTwo, v128.load(qAt + i, 16)));
    more = f64x2.add(more, f64x2.mul(cTwo, v128.load(rAt + i, 16)));
    more = f64x2.add(more, f64x2.mul(dTwo, v128.load(sAt + i, 16)));
    v128.store(toAt + i, f64x2.add(v128.load(fromAt + i, 16), f64x2.mul(byTwo, more)), 16);
  }
}

@inline function largestOfFive(
  m: Memory, a: f64, p: i32, b: f64, q: i32, c: f64, r: i32, d: f64, s: i32, e: f64, t: i32, weight: i32, size: i32,
): f64 {
  const aTwo = f64x2.splat(a);
  const bTwo = f64x2.splat(b);
  const cTwo = f64x2.splat(c);
  const dTwo = f64x2.splat(d);
  const eTwo = f64x2.splat(e);
  const pAt = addressOf(m, p);
  const qAt = addressOf(m, q);
  const rAt = addressOf(m, r);
  const sAt = addressOf(m, s);
  const tAt = addressOf(m, t);
  const weightAt = addressOf(m, weight);
  const end = <usize>size << 3;
  let largest = f64x2.splat(0);
  let total = f64x2.splat(0);
  for (let i: usize = 0; i < end; i += 16) {
    let sum = f64x2.mul(aTwo, v128.load(pAt + i));
    sum = f64x2.add(sum, f64x2.mul(bTwo, v128.load(qAt + i)));
    sum = f64x2.add(sum, f64x2.mul(cTwo, v128.load(rAt + i)));
    sum = f64x2.add(sum, f64x2.mul(dTwo, v128.load(sAt + i)));
    sum = f64x2.add(sum, f64x2.mul(eTwo, v128.load(tAt + i)));
    const weighed = f64x2.mul(f64x2.abs(sum), v128.load(weightAt + i));
    // The plain kind of maximum is one instruction and loses what is not a number; the total keeps it.
    largest = f64x2.pmax(largest, weighed);
    total = f64x2.add(total, weighed);
  }
  const all = f64x2.extract_lane(total, 0) + f64x2.extract_lane(total, 1);
  const one = f64x2.extract_lane(largest, 0);
  const other = f64x2.extract_lane(largest, 1);
  return all < Infinity ? (one < other ? other : one) : NaN;
}

// Pairs: what is left in the first lane, what is right in the second. lanes.ts writes loops over sides with them.

@inline function pairAt(m: Memory, place: i32): v128 {
  return v128.load(addressOf(m, place));
}

@inline function setPair(m: Memory, place: i32, pair: v128): void {
  v128.store(addressOf(m, place), pair);
}

@inline function bothAt(m: Memory, place: i32): v128 {
  return v128.load64_splat(addressOf(m, place));
}

@inline function leftOf(pair: v128): f64 {
  return f64x2.extract_lane(pair, 0);
}

@inline function rightOf(pair: v128): f64 {
  return f64x2.extract_lane(pair, 1);
}

@inline function pairOf(left: f64, right: f64): v128 {
  return f64x2.replace_lane(f64x2.splat(left), 1, right);
}

@inline function onBoth(holds: bool): v128 {
  return i64x2.splat(holds ? -1 : 0);
}

// bitWhere of dynamics.ts: a byte a corner, the right one behind the left.
@inline function bitWherePair(holds: v128, corner: i32, which: i32): i32 {
  const two = i64x2.bitmask(holds);
  return ((two | (two << 7)) & 0x101) << (at.CONTACTS * corner + which);
}

// Whole parts of two numbers that are not below zero; 0 for what is not a number.
@inline function wholes(pair: v128): v128 {
  return i32x4.trunc_sat_f64x2_s_zero(pair);
}

// A place among pieces that are counted from zero; what is not a number stays none.
@inline function within(pair: v128, last: v128): v128 {
  return f64x2.pmax(f64x2.pmin(pair, last), f64x2.splat(0));
}

// linearAt of tables.ts. It remembers the pieces that it found last: mostly they are those of the next look as well, and
// then nothing has to be waited for.
@inline function linearAtPair(m: Memory, table: i32, x: v128): v128 {
  const stays = v128.and(f64x2.ge(x, pairAt(m, table + 4)), f64x2.lt(x, pairAt(m, table + 6)));
  if (i64x2.bitmask(stays) !== 3) findPieces(m, table, x);
  return f64x2.add(pairAt(m, table + 10), f64x2.mul(pairAt(m, table + 8), x));
}

function findPieces(m: Memory, table: i32, x: v128): void {
  findPiece(m, table, leftOf(x), 0);
  findPiece(m, table, rightOf(x), 1);
}

@inline function findPiece(m: Memory, table: i32, x: f64, side: i32): void {
  const cell = Math.max(Math.min((x - m[table]) * m[table + 1], m[table + 2]), 0);
  let piece = table + LINE_HEAD + placeAt(m, table + 3) * whole(cell);
  while (x >= m[piece]) piece += LINE;
  m[table + 4 + side] = m[piece + 3];
  m[table + 6 + side] = m[piece];
  m[table + 8 + side] = m[piece + 1];
  m[table + 10 + side] = m[piece + 2];
}

// cubicAt of tables.ts.
@inline function cubicAtPair(m: Memory, table: i32, x: v128): v128 {
  let left = table;
  let right = table;
  while (leftOf(x) >= m[left]) left += CUBIC;
  while (rightOf(x) >= m[right]) right += CUBIC;
  const one = pairAt(m, left + 1);
  const other = pairAt(m, right + 1);
  const oneMore = pairAt(m, left + 3);
  const otherMore = pairAt(m, right + 3);
  const u = f64x2.sub(x, v128.shuffle<f64>(one, other, 0, 2));
  const last = f64x2.mul(u, pairOf(m[left + 5], m[right + 5]));
  const third = f64x2.mul(u, f64x2.add(v128.shuffle<f64>(oneMore, otherMore, 1, 3), last));
  const second = f64x2.mul(u, f64x2.add(v128.shuffle<f64>(oneMore, otherMore, 0, 2), third));
  return f64x2.add(v128.shuffle<f64>(one, other, 1, 3), second);
}

// Value of the cubics at two places, and their slopes over u into the memory: a, b, c, d behind each other.
@inline function cubicsAt(m: Memory, left: i32, right: i32, u: v128, scale: v128, slopes: i32): v128 {
  const one = pairAt(m, left);
  const other = pairAt(m, right);
  const oneMore = pairAt(m, left + 2);
  const otherMore = pairAt(m, right + 2);
  const b = v128.shuffle<f64>(one, other, 1, 3);
  const c = v128.shuffle<f64>(oneMore, otherMore, 0, 2);
  const d = f64x2.mul(u, v128.shuffle<f64>(oneMore, otherMore, 1, 3));
  // Twice and three times, by sums that round alike.
  const bend = f64x2.add(f64x2.add(c, c), f64x2.add(f64x2.add(d, d), d));
  setPair(m, slopes, f64x2.mul(scale, f64x2.add(b, f64x2.mul(u, bend))));
  const rise = f64x2.mul(u, f64x2.add(b, f64x2.mul(u, f64x2.add(c, d))));
  return f64x2.add(v128.shuffle<f64>(one, other, 0, 2), rise);
}

// followOnSide of tables.ts.
function followOnSidePair(m: Memory, path: i32, travel: v128, side: i32): v128 {
  if (path === 0) {
    setPair(m, at.SIDE_LEVER, f64x2.splat(1));
    return travel;
  }
  const perTravel = bothAt(m, path + 1);
  const place = f64x2.mul(f64x2.sub(travel, bothAt(m, path)), perTravel);
  const piece = within(place, bothAt(m, path + 2));
  const pieces = wholes(piece);
  const first = path + EVEN_HEAD;
  const left = first + EVEN * i32x4.extract_lane(pieces, 0);
  const right = first + EVEN * i32x4.extract_lane(pieces, 1);
  const u = f64x2.sub(place, f64x2.floor(piece));
  return cubicsAt(m, left, right, u, perTravel, at.SIDE_LEVER);
}

// readUnderAxle of ground.ts.
@inline function readUnderAxle(m: Memory, left: i32, distance: f64): void {
  const along = f64x2.mul(f64x2.sub(f64x2.splat(distance), pairAt(m, at.ORIGIN)), pairAt(m, at.PIECES_PER_METRE));
  const inside = within(along, pairAt(m, at.LAST_PIECE));
  const piece = f64x2.floor(inside);
  const two = f64x2.add(piece, piece);
  const places = f64x2.add(pairAt(m, at.SHIFTED_PIECES), f64x2.add(two, two));
  const one = i32x4.extract_lane(places, 0);
  const other = i32x4.extract_lane(places, 2);
  const u = f64x2.sub(inside, piece);
  const perSecond = pairAt(m, at.PIECES_PER_SECOND);
  setPair(m, at.HEIGHT_UNDER + left, cubicsAt(m, one, other, u, perSecond, at.RISE_UNDER + left));
}
