import type { Command } from "./command.ts";
import { UsageError } from "./usage.ts";

export const schedule: Command = {
  name: "schedule",
  usage: [
    {
      words: "[files or folders]",
      does: "wire schedule, cut list, parts list, fuse map, labels, checks before first power",
    },
  ],
  takes: [],
  async run() {
    throw new UsageError("not there yet.");
  },
};
