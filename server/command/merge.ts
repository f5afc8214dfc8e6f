import type { Command } from "./command.ts";
import { UsageError } from "./usage.ts";

export const merge: Command = {
  name: "merge",
  usage: [{ words: "<files>", does: "join what the shards of one check wrote" }],
  takes: [],
  async run() {
    throw new UsageError("not there yet.");
  },
};
