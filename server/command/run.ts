import { parseArgs } from "node:util";
import { version } from "../../library/package.json";
import { check } from "./check.ts";
import { explain } from "./explain.ts";
import { fix } from "./fix.ts";
import type { Terminal } from "./terminal.ts";
import { UsageError, usage } from "./usage.ts";

/** The outside of the command line, so that a test can stand in for it. */
export interface Outside {
  readonly cwd: string;
  out(text: string): void;
  err(text: string): void;
  readonly terminal: Terminal;
}

export type ExitCode = 0 | 1 | 2;

/** Runs one command. Nothing a person types, and no plan, makes it throw: whatever goes wrong is said and answered with 2. */
export async function run(words: readonly string[], outside: Outside): Promise<ExitCode> {
  try {
    return await dispatch(words, outside);
  } catch (error) {
    if (error instanceof UsageError) {
      outside.err(`loomwright: ${error.message}\nloomwright --help lists what it understands.\n`);
    } else {
      outside.err(`loomwright: something went wrong inside Loomwright itself: ${firstLine(error)}\n`);
    }
    return 2;
  }
}

async function dispatch(words: readonly string[], outside: Outside): Promise<ExitCode> {
  const { values, positionals } = parse(words);
  if (values.version) {
    outside.out(`${version}\n`);
    return 0;
  }
  const [command, ...names] = positionals;
  if (values.help || (command === undefined && words.length === 0)) {
    outside.out(usage);
    return 0;
  }
  const maxWarnings = wholeNumber("--max-warnings", values["max-warnings"] ?? "0");
  switch (command) {
    case "check":
      return check({ names, format: format(values.format ?? "text"), maxWarnings }, outside);
    case "fix":
      return fix({ names, maxWarnings, dryRun: values["dry-run"] ?? false }, outside);
    case "explain":
      return explain(names, outside);
    default:
      throw new UsageError(
        command === undefined
          ? "say check, fix or explain."
          : `there is no command '${command}'; there are check, fix and explain.`,
      );
  }
}

function parse(words: readonly string[]) {
  try {
    return parseArgs({
      args: [...words],
      allowPositionals: true,
      options: {
        format: { type: "string" },
        "max-warnings": { type: "string" },
        "dry-run": { type: "boolean" },
        help: { type: "boolean", short: "h" },
        version: { type: "boolean" },
      },
    });
  } catch (error) {
    throw new UsageError(firstLine(error).replace(/\. To specify.*$/, "."));
  }
}

function format(given: string): "text" | "json" {
  if (given === "text" || given === "json") return given;
  throw new UsageError(`--format is text or json, not '${given}'.`);
}

function wholeNumber(option: string, given: string): number {
  if (/^\d{1,6}$/.test(given)) return Number(given);
  throw new UsageError(`${option} takes a whole number from 0 up, not '${given}'.`);
}

function firstLine(error: unknown): string {
  return (error instanceof Error ? error.message : String(error)).split("\n")[0]!;
}
