/**
 * The memory of a WebAssembly instance, which refuses to grow beyond a limit. QuickJS has a limit of its own, but in this build
 * it counts blocks and not their sizes, and refuses only a single huge block. With this memory, growth simply fails, and the
 * engine throws "out of memory" in the plan.
 */
export interface EngineMemory {
  /** Passed to the engine at its start. */
  readonly memory: WasmMemory;
  readonly bytes: number;
  /** The limit on growth. Memory already allocated is kept. */
  limitBytes: number;
}

export function engineMemory(): EngineMemory {
  const memory = new wasm.Memory({ initial: initialBytes / pageBytes, maximum: maximumBytes / pageBytes });
  const grow = memory.grow.bind(memory);
  const limited: EngineMemory = {
    memory,
    get bytes() {
      return memory.buffer.byteLength;
    },
    limitBytes: maximumBytes,
  };
  memory.grow = (pages) => {
    if (limited.bytes + pages * pageBytes > limited.limitBytes)
      throw new RangeError("the plan's memory is used up");
    return grow(pages);
  };
  return limited;
}

const pageBytes = 64 * 1024;

/** The engine's compiled-in values. */
const initialBytes = 16 * 1024 * 1024;
const maximumBytes = 2 * 1024 * 1024 * 1024;

/** Node has WebAssembly; its type declarations lack it. */
interface WasmMemory {
  readonly buffer: ArrayBuffer;
  grow(pages: number): number;
}
const { WebAssembly: wasm } = globalThis as unknown as {
  WebAssembly: { Memory: new (pages: { initial: number; maximum: number }) => WasmMemory };
};
