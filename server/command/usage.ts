import type { Command } from "./command.ts";
import { type OptionName, options } from "./options.ts";

/** Wrong words on the command line: reported in a sentence, with exit code 2. */
export class UsageError extends Error {}

/** The help, composed from the usage of each command. */
export function usage(commands: readonly Command[]): string {
  const written = commands.flatMap(({ name, usage }) =>
    usage.map(({ words, does }) => [`loomwright ${name}${words && ` ${words}`}`, does] as const),
  );
  const taken = (Object.keys(options) as OptionName[]).flatMap((option) => {
    const by = commands.filter(({ takes }) => takes.includes(option)).map(({ name }) => name);
    const { help, ...spec } = options[option];
    const words = `--${option}${"value" in spec ? ` ${spec.value}` : ""}`;
    return by.length > 0 ? [[words, `${help} (${by.join(", ")})`] as const] : [];
  });
  return `Loomwright checks low-voltage electrical plans written in TypeScript.

Usage
${columns(written)}

Options
${columns([...taken, ["--version", "the version"], ["--help", "this text"]])}

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

function columns(rows: readonly (readonly [string, string])[]): string {
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
  throw new UsageError(`--${option} is ${words.slice(0, -1).join(", ")} or ${words.at(-1)}, not '${given}'.`);
}
