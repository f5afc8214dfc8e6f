import { readFile } from "node:fs/promises";

/*
 * V8 compiles a WebAssembly module once for all threads of a process, as long as one of them holds it. Each test starts and ends
 * threads of its own, and each would compile QuickJS anew: half of a test's work. Held here, it is compiled once for a process.
 */

const kept = Symbol.for("loomwright.tests.kept-engine");
const holder = globalThis as unknown as { [kept]?: unknown };

const { WebAssembly: wasm } = globalThis as unknown as {
  WebAssembly: { compile(bytes: Uint8Array): Promise<unknown> };
};

holder[kept] ??= await wasm.compile(
  await readFile(new URL("../../server/dist/quickjs.wasm", import.meta.url)),
);
