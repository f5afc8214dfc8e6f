import { parentPort } from "node:worker_threads";
import { layOut } from "../../library/documents/diagram/lay-out.ts";
import type { FromLayoutWorker, ToLayoutWorker } from "./layouts.ts";

/*
 * The thread in which diagrams are laid out: it may take a second for a large one, and the library that does it takes some
 * time to load. One diagram after another.
 */

const port = parentPort!;

port.on("message", async ({ graph }: ToLayoutWorker) => {
  port.postMessage({ laidOut: await layOut(graph) } satisfies FromLayoutWorker);
});
