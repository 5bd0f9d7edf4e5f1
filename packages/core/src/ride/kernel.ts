import { takeSteps } from './drive.ts';
import { KERNEL_BYTES } from './kernel-bytes.ts';
import type { Memory } from './memory.ts';
import { type WasmMemory, webAssembly } from './web-assembly.ts';

/** The steps of a ride, on a memory that is made once for all runs of a thread. */
export interface Kernel {
  /** Its memory, with at least so many places; what stood in it is gone when it had to grow. */
  memoryFor(places: number): Memory;
  /** Takes so many steps, or what is left of the run, in the memory that was asked for last. */
  takeSteps(count: number): void;
}

/** The kernel as it stands in TypeScript: wherever there is nothing faster. */
export function plainKernel(): Kernel {
  let memory: Memory = new Float64Array(0);
  return {
    memoryFor(places) {
      if (memory.length < places) memory = new Float64Array(Math.ceil(1.5 * places));
      return memory;
    },
    takeSteps: (count) => takeSteps(memory, count),
  };
}

const PLACES_PER_PAGE = 65_536 / 8;

/** The same source compiled to WebAssembly; null where the host has none or forbids it. */
export function compiledKernel(): Kernel | null {
  if (!webAssembly) return null;
  let memory: WasmMemory;
  let steps: (count: number) => void;
  try {
    memory = new webAssembly.Memory({ initial: 1 });
    const module = new webAssembly.Module(bytesOf(KERNEL_BYTES));
    const { exports } = new webAssembly.Instance(module, { env: { memory } });
    steps = (exports as { takeSteps: (count: number) => void }).takeSteps;
  } catch {
    // A page whose policy forbids compiling, or a thread on which it may not be done at once.
    return null;
  }
  let view: Memory = new Float64Array(memory.buffer);
  return {
    memoryFor(places) {
      if (view.length < places) {
        memory.grow(Math.ceil((1.5 * places - view.length) / PLACES_PER_PAGE));
        view = new Float64Array(memory.buffer);
      }
      return view;
    },
    takeSteps: (count) => steps(count),
  };
}

const DIGITS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** Bytes of a base64 text; hosts have no common function for it. */
function bytesOf(text: string): Uint8Array {
  const bytes = new Uint8Array(Math.floor((text.replace(/=+$/, '').length * 3) / 4));
  let bits = 0;
  let filled = 0;
  let count = 0;
  for (const digit of text) {
    if (digit === '=') break;
    bits = ((bits << 6) | DIGITS.indexOf(digit)) & 0xffff;
    filled += 6;
    if (filled < 8) continue;
    filled -= 8;
    bytes[count] = (bits >> filled) & 0xff;
    count += 1;
  }
  return bytes;
}

let chosen: Kernel | null = null;

/** The kernel of this thread: compiled where that is possible. */
export function rideKernel(): Kernel {
  chosen ??= compiledKernel() ?? plainKernel();
  return chosen;
}
