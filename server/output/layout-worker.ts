import { parentPort } from "node:worker_threads";
import { layOut } from "../../library/documents/diagram/lay-out.ts";
import type { FromLayoutWorker, ToLayoutWorker } from "./layouts.ts";

/*
 * The thread that lays out diagrams, one after another: a large one may take a second, and the layout library takes some time to
 * load.
 */

const port = parentPort!;

port.on("message", async ({ graph }: ToLayoutWorker) => {
  port.postMessage({ laidOut: await layOut(graph) } satisfies FromLayoutWorker);
});
