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
