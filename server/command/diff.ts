import type { Command } from "./command.ts";
import { UsageError } from "./usage.ts";

export const diff: Command = {
  name: "diff",
  usage: [
    {
      words: "<revision or folder> [<revision or folder>]",
      does: "what changed between two states of a plan, and what that does elsewhere",
    },
  ],
  takes: [],
  async run() {
    throw new UsageError("not there yet.");
  },
};
