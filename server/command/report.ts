import type { Command } from "./command.ts";
import { UsageError } from "./usage.ts";

export const report: Command = {
  name: "report",
  usage: [{ words: "[file or folder]", does: "everything about a plan in one file to hand out" }],
  takes: [],
  async run() {
    throw new UsageError("not there yet.");
  },
};
