import type { Command } from "./command.ts";
import { UsageError } from "./usage.ts";

export const draw: Command = {
  name: "draw",
  usage: [{ words: "[files or folders]", does: "draw the wiring diagram of each plan" }],
  takes: [],
  async run() {
    throw new UsageError("not there yet.");
  },
};
