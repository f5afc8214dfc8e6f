import type { GivenOptions, OptionName } from "./options.ts";
import type { ExitCode, Host } from "./run.ts";

/** One command of `loomwright`. Its file says what it is called, what it takes, and does it. */
export interface Command {
  readonly name: string;
  /** For the help: what to write behind the name, and what it then does. */
  readonly usage: readonly { readonly words: string; readonly does: string }[];
  readonly takes: readonly OptionName[];
  /** Where wrong words are an error that is not found out before, it throws a {@link import("./usage.ts").UsageError}. */
  run(names: readonly string[], given: GivenOptions, outside: Host): Promise<ExitCode>;
}
