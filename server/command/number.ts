import type { Command } from "./command.ts";
import { UsageError } from "./usage.ts";

export const number: Command = {
  name: "number",
  usage: [
    {
      words: "[files or folders]",
      does: "give every conductor a number that stays, and keep it beside the plan",
    },
  ],
  takes: [],
  async run() {
    throw new UsageError("not there yet.");
  },
};
