import { parseArgs } from "node:util";
import { nearestName } from "../../library/model/nearest-name.ts";
import { version } from "../../library/package.json";
import type { Command } from "./command.ts";
import type { ExitCode, Host } from "./host.ts";

import { type GivenOptions, type OptionName, options } from "./options.ts";
import { commandUsage, UsageError, usage } from "./usage.ts";

/**
 * In the order of the help. A command is loaded when asked for: the others do not pay for its needs (TypeScript, a typeface, the
 * layout).
 */
const commands: Readonly<Record<string, () => Promise<Command>>> = {
  check: async () => (await import("./check.ts")).check,
  fix: async () => (await import("./fix.ts")).fix,
  explain: async () => (await import("./explain.ts")).explain,
  draw: async () => (await import("./draw.ts")).draw,
  arrange: async () => (await import("./arrange.ts")).arrange,
  schedule: async () => (await import("./schedule.ts")).schedule,
  energy: async () => (await import("./energy.ts")).energy,
  number: async () => (await import("./number.ts")).number,
  report: async () => (await import("./report.ts")).report,
  diff: async () => (await import("./diff.ts")).diff,
  merge: async () => (await import("./merge.ts")).merge,
  new: async () => (await import("./new.ts")).newPlan,
};

/** Runs one command. No input and no plan makes it throw: every failure is reported and returns 2. */
export async function run(words: readonly string[], outside: Host): Promise<ExitCode> {
  try {
    return await dispatch(words, outside);
  } catch (error) {
    if (error instanceof UsageError) {
      outside.err(`loomwright: ${error.message}\n${whereToRead(words)}\n`);
    } else {
      outside.err(`loomwright: Loomwright itself failed: ${firstLine(error)}\n`);
    }
    return 2;
  }
}

function whereToRead(words: readonly string[]): string {
  const name = words.find(isCommand);
  return name === undefined
    ? "loomwright --help lists all commands."
    : `loomwright help ${name} shows its arguments and options.`;
}

function isCommand(name: string): boolean {
  return Object.hasOwn(commands, name);
}

async function dispatch(words: readonly string[], outside: Host): Promise<ExitCode> {
  const { given, help, asksVersion, positionals } = parse(words);
  const [name, ...names] = positionals;
  if (asksVersion || (name === "version" && !help)) {
    outside.out(`${version}\n`);
    return 0;
  }
  if (help || name === "help" || words.length === 0) {
    const about = positionals.find((word) => word !== "help" && word !== "version");
    outside.out(await helpAbout(about));
    return 0;
  }
  const command = await loadCommand(name);
  const foreign = (Object.keys(given) as OptionName[]).find((option) => !command.takes.includes(option));
  if (foreign) throw new UsageError(`'${command.name}' does not take --${foreign}.`);
  return command.run(names, given, outside);
}

async function helpAbout(name: string | undefined): Promise<string> {
  return name === undefined
    ? usage(await Promise.all(Object.values(commands).map((load) => load())))
    : commandUsage(await loadCommand(name));
}

function loadCommand(name: string | undefined): Promise<Command> {
  if (name !== undefined && isCommand(name)) return commands[name]!();
  const all = Object.keys(commands);
  const there = `${all.slice(0, -1).join(", ")} and ${all.at(-1)}`;
  if (name === undefined) throw new UsageError(`give a command: ${there}.`);
  const meant = nearestName(name, [...all, "help", "version"]);
  throw new UsageError(
    `there is no command '${name}'${meant === undefined ? `; there are ${there}.` : `. Did you mean ${meant}?`}`,
  );
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
    const message = firstLine(error).replace(/\. To specify.*$/, ".");
    const unknown = /^Unknown option '--([^']*)'/.exec(message)?.[1];
    const meant = unknown && nearestName(unknown, [...Object.keys(options), "help", "version"]);
    throw new UsageError(meant ? `there is no option --${unknown}. Did you mean --${meant}?` : message);
  }
}

function firstLine(error: unknown): string {
  return (error instanceof Error ? error.message : String(error)).split("\n")[0]!;
}
