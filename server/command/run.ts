import { parseArgs } from "node:util";
import { version } from "../../library/package.json";
import type { Command } from "./command.ts";
import type { ExitCode, Host } from "./host.ts";
import { type GivenOptions, type OptionName, options } from "./options.ts";
import { UsageError, usage } from "./usage.ts";

/**
 * In the order of the help. A command is loaded when asked for: the others do not pay for its needs (TypeScript, a typeface, the
 * layout).
 */
const commands: Readonly<Record<string, () => Promise<Command>>> = {
  check: async () => (await import("./check.ts")).check,
  fix: async () => (await import("./fix.ts")).fix,
  explain: async () => (await import("./explain.ts")).explain,
  draw: async () => (await import("./draw.ts")).draw,
  schedule: async () => (await import("./schedule.ts")).schedule,
  number: async () => (await import("./number.ts")).number,
  report: async () => (await import("./report.ts")).report,
  diff: async () => (await import("./diff.ts")).diff,
  merge: async () => (await import("./merge.ts")).merge,
};

/** Runs one command. No input and no plan makes it throw: every failure is reported and returns 2. */
export async function run(words: readonly string[], outside: Host): Promise<ExitCode> {
  try {
    return await dispatch(words, outside);
  } catch (error) {
    if (error instanceof UsageError) {
      outside.err(`loomwright: ${error.message}\nloomwright --help lists all commands.\n`);
    } else {
      outside.err(`loomwright: Loomwright itself failed: ${firstLine(error)}\n`);
    }
    return 2;
  }
}

async function dispatch(words: readonly string[], outside: Host): Promise<ExitCode> {
  const { given, help, asksVersion, positionals } = parse(words);
  if (asksVersion) {
    outside.out(`${version}\n`);
    return 0;
  }
  const [name, ...names] = positionals;
  if (help || words.length === 0) {
    outside.out(usage(await Promise.all(Object.values(commands).map((load) => load()))));
    return 0;
  }
  const load = name !== undefined && Object.hasOwn(commands, name) ? commands[name] : undefined;
  if (!load) {
    const all = Object.keys(commands);
    const there = `${all.slice(0, -1).join(", ")} and ${all.at(-1)}`;
    throw new UsageError(
      name === undefined ? `give a command: ${there}.` : `there is no command '${name}'; there are ${there}.`,
    );
  }
  const command = await load();
  const foreign = (Object.keys(given) as OptionName[]).find((option) => !command.takes.includes(option));
  if (foreign) throw new UsageError(`'${command.name}' does not take --${foreign}.`);
  return command.run(names, given, outside);
}

function parse(words: readonly string[]) {
  try {
    const { values, positionals } = parseArgs({
      args: [...words],
      allowPositionals: true,
      options: { ...options, help: { type: "boolean", short: "h" }, version: { type: "boolean" } },
    });
    const { help = false, version: asksVersion = false, ...given } = values;
    return { given: given as GivenOptions, help, asksVersion, positionals };
  } catch (error) {
    throw new UsageError(firstLine(error).replace(/\. To specify.*$/, "."));
  }
}

function firstLine(error: unknown): string {
  return (error instanceof Error ? error.message : String(error)).split("\n")[0]!;
}
