import type { Command } from "./command.ts";
import { type OptionName, options } from "./options.ts";

/** Wrong words on the command line: reported in a sentence, with exit code 2. */
export class UsageError extends Error {}

/** The help, composed from the usage of each command. */
export function usage(commands: readonly Command[]): string {
  return `Loomwright checks low-voltage electrical plans written in TypeScript.

Usage
${columns([...commands.flatMap(usageRows), ["loomwright help <command>", "the arguments and options of one command"]])}

Options
${columns([...optionRows(commands, true), ["--version", "the version"], ["--help", "this text; after a command, the help of that command"]])}

Exit codes
  0  no findings (hints, information and accepted findings do not count)
  1  errors found, or more warnings than tolerated; diff: new errors or warnings
  2  a plan could not be judged to its end, a file that looks like a plan could not be judged, there was no plan, an output could
     not be written, or the command was not understood

A folder means every plan below it, except in node_modules and in folders whose names begin with a dot. Links, files that git
ignores and compiled copies of plans are listed and not judged.

Results of check are kept in your own cache folder, by the content of the plans, and used again while the plans are unchanged.
LOOMWRIGHT_CACHE names another folder for them; one inside the repository that is checked is not used.

Loomwright is a planning aid. Batteries can deliver thousands of amperes. Local codes rule.
`;
}

/** The help of one command. */
export function commandUsage(command: Command): string {
  const taken = optionRows([command], false);
  return `Usage
${columns(usageRows(command))}
${taken.length > 0 ? `\nOptions\n${columns(taken)}\n` : ""}
loomwright help lists all commands, the exit codes, and the files that count as plans.
`;
}

type Row = readonly [left: string, right: string];

function usageRows({ name, usage }: Command): Row[] {
  return usage.map(({ words, does }) => [`loomwright ${name}${words && ` ${words}`}`, does]);
}

/** The options of the commands; `namesTakers` adds the commands that take each. */
function optionRows(commands: readonly Command[], namesTakers: boolean): Row[] {
  return (Object.keys(options) as OptionName[]).flatMap((option): Row[] => {
    const takers = commands.filter(({ takes }) => takes.includes(option));
    if (takers.length === 0) return [];
    const { help, ...spec } = options[option];
    const words = `--${option}${"value" in spec ? ` ${spec.value}` : ""}`;
    const allowed = option === "format" ? formatsInWords(takers, namesTakers) : "";
    const by = namesTakers ? ` (${takers.map(({ name }) => name).join(", ")})` : "";
    return [[words, `${help}${allowed || by}`]];
  });
}

/** Commands with the same formats share one list. */
function formatsInWords(commands: readonly Command[], namesTakers: boolean): string {
  const by = new Map<string, string[]>();
  for (const { name, formats = [] } of commands) {
    const list = oneOf(formats);
    by.set(list, [...(by.get(list) ?? []), name]);
  }
  const lists = [...by].map(([list, names]) => (namesTakers ? `${list} (${names.join(", ")})` : list));
  return `: ${lists.join("; ")}; default text`;
}

function columns(rows: readonly Row[]): string {
  const width = Math.max(...rows.map(([left]) => left.length));
  return rows.map(([left, right]) => `  ${left.padEnd(width)}  ${right}`).join("\n");
}

/** A whole number from 0 up, as typed after an option. */
export function wholeNumber(option: OptionName, given: string): number {
  if (/^\d{1,6}$/.test(given)) return Number(given);
  throw new UsageError(`--${option} takes a whole number from 0 up, not '${given}'.`);
}

/** One of the words that an option allows; the first one if none was typed. */
export function oneOfWords<Word extends string>(
  option: OptionName,
  given: string | undefined,
  words: readonly [Word, ...Word[]],
): Word {
  const found = given === undefined ? words[0] : words.find((word) => word === given);
  if (found !== undefined) return found;
  throw new UsageError(`--${option} is ${oneOf(words)}, not '${given}'.`);
}

/** "text, csv or json" */
export function oneOf(words: readonly string[]): string {
  return `${words.slice(0, -1).join(", ")} or ${words.at(-1)}`;
}
