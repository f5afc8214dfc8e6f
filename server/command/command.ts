import type { ExitCode, Host } from "./host.ts";
import type { GivenOptions, OptionName } from "./options.ts";

/** One command of `loomwright`. Its file holds its name, its options and its action. */
export interface Command {
  readonly name: string;
  /** For the help: the words to write after the name, and their effect. */
  readonly usage: readonly { readonly words: string; readonly does: string }[];
  readonly takes: readonly OptionName[];
  /** The allowed values of `--format`, the default first; for a command that takes it. */
  readonly formats?: readonly string[];
  /** Throws a {@link import("./usage.ts").UsageError} for wrong words that were not detected earlier. */
  run(names: readonly string[], given: GivenOptions, outside: Host): Promise<ExitCode>;
}
