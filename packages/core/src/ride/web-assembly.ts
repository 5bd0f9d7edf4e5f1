/** The few members of WebAssembly that the kernel needs; core is compiled without the types of any host. */
interface WasmMemory {
  readonly buffer: ArrayBuffer;
  grow(pages: number): number;
}

interface WasmHost {
  readonly Memory: new (size: { readonly initial: number }) => WasmMemory;
  readonly Module: new (bytes: Uint8Array) => object;
  readonly Instance: new (module: object, imports: object) => { readonly exports: object };
}

/** The host's WebAssembly, where there is one. */
export const webAssembly = (globalThis as { readonly WebAssembly?: WasmHost }).WebAssembly;
export type { WasmMemory };
