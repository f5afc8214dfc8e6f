import { existsSync } from "node:fs";
import { resolve } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { endInWords } from "../../library/documents/schedules/cells.ts";
import { nameAndEnds } from "../../library/documents/schedules/wire-identity.ts";
import {
  canBeKept,
  type NumberedWire,
  type NumberedWires,
} from "../../library/documents/schedules/wire-numbers.ts";
import { wireNumbersFile } from "../../library/documents/schedules/wire-numbers-file.ts";
import type { Wire } from "../../library/documents/schedules/wires.ts";
import { counted } from "../../library/rules/wording/format-number.ts";
import { numberedWires } from "../evaluate/files/kept-numbers.ts";
import { isWireNumbers } from "../evaluate/files/plan-files.ts";
import type { Uri } from "../evaluate/workspace.ts";
import { keepNumbers, numbersToKeep, whyNotNumbered } from "../output/keep-numbers.ts";
import { eachCheckedPlan, type OpenedPlan, shownFile } from "./checked-plans.ts";
import type { Command } from "./command.ts";
import type { ExitCode, Host } from "./host.ts";
import { printable } from "./terminal.ts";
import { UsageError } from "./usage.ts";

/** `loomwright number`: a number for every conductor, kept beside the plan. No other command writes that file. */
export const number: Command = {
  name: "number",
  usage: [
    {
      words: "[files or folders]",
      does: "give every conductor a permanent number, and keep it beside the plan",
    },
    { words: "[file] --from OLD", does: "the same, with the numbers of a plan that had another name" },
  ],
  takes: ["dry-run", "from"],
  run: (names, given, outside) => {
    const from = given.from === undefined ? undefined : numbersNamed(given.from, outside.cwd);
    const asked: Asked = { dryRun: given["dry-run"] ?? false, from };
    return eachCheckedPlan(names, outside, (opened) => {
      if (from !== undefined && opened.of > 1)
        throw new UsageError(`--from is for one plan, and there are ${opened.of}: name one.`);
      return numberPlan(opened, asked, outside);
    });
  },
};

interface Asked {
  readonly dryRun: boolean;
  /** The file to take the numbers over from. */
  readonly from: Uri | undefined;
}

/** The file of numbers that a word names: itself, or by the plan that it was made for. */
function numbersNamed(typed: string, cwd: string): Uri {
  const path = resolve(cwd, typed);
  const uri = pathToFileURL(path).href;
  const file = isWireNumbers(path) ? uri : wireNumbersFile(uri);
  if (existsSync(fileURLToPath(file))) return file;
  throw new UsageError(
    `--from names the old plan or its file of numbers, and there is no ${shownFile(file, cwd)}.`,
  );
}

async function numberPlan(opened: OpenedPlan, { dryRun, from }: Asked, outside: Host): Promise<ExitCode> {
  const { plan, workspace } = opened;
  const uri = wireNumbersFile(plan.root);
  const file = printable(shownFile(uri, outside.cwd));
  if (from !== undefined && from !== uri && workspace.read(uri)) {
    outside.err(
      `loomwright: ${file} is there already; delete it to take the numbers over from another file.\n`,
    );
    return 2;
  }
  const { numbered, kept, takenFrom } = numberedWires(plan, workspace, from);
  const refusals = whyNotNumbered(plan, kept);
  if (refusals.length > 0) {
    for (const { line, text } of refusals)
      outside.err(`loomwright: ${file}${line === undefined ? "" : `:${line}`}: ${printable(text)}\n`);
    outside.err(`loomwright: ${file}: it was not written.\n`);
    return 2;
  }
  const wanted = numbersToKeep(plan, workspace, { numbered, kept });
  const { changes } = wanted;
  outside.out(summary(file, numbered, { changes, dryRun }));
  if (takenFrom !== undefined) {
    const old = printable(shownFile(takenFrom, outside.cwd));
    outside.out(`  The numbers are those of ${old}: delete that file once ${file} is written.\n`);
  }
  if (!changes) return 0;
  if (dryRun) return 1;
  const written = await keepNumbers(wanted);
  if (written.written) return 0;
  outside.err(`loomwright: ${file} ${printable(written.why)}; it was not changed.\n`);
  return 2;
}

function summary(
  file: string,
  { wires, retired, twice }: NumberedWires,
  { changes, dryRun }: { readonly changes: boolean; readonly dryRun: boolean },
): string {
  const keepable = wires.filter(({ identity }) => canBeKept(identity));
  const lost = new Set(twice.map(({ wire }) => wire));
  const added = keepable.filter(({ kept, wire }) => !kept && !lost.has(wire));
  const altered = keepable.filter(
    ({ before, identity }) => before && nameAndEnds(before.identity) !== nameAndEnds(identity),
  );
  const renamed = altered.filter(({ before, identity }) => before?.identity.name !== identity.name);
  const moved = altered.filter((one) => !renamed.includes(one));
  const counts = [
    `${counted(keepable.length, "conductor")} numbered`,
    ...(added.length > 0 ? [`${added.length} added`] : []),
    ...(renamed.length > 0 ? [`${renamed.length} renamed`] : []),
    ...(moved.length > 0 ? [`${moved.length} reconnected`] : []),
    ...(retired.length > 0 ? [`${retired.length} retired`] : []),
    ...(twice.length > 0 ? [`${twice.length} given twice`] : []),
  ].join(", ");
  const state = changes ? (dryRun ? "would change" : "written") : "unchanged";
  const nameless = wires.length - keepable.length;
  return [
    `${file}: ${state}; ${counts}`,
    ...added.map(({ number, wire }) => line("added", number, wireInWords(wire))),
    ...renamed.map(({ number, wire, before }) =>
      line("renamed", number, `${wireInWords(wire)}, was ${before?.identity.name ?? "without a name"}`),
    ),
    ...moved.map(({ number, wire }) => line("joins", number, `${wireInWords(wire)} now`)),
    ...retired.map(({ number, identity }) =>
      line("retired", number, `${identity.name ?? "without a name"}, ${identity.role}`),
    ),
    ...twice.map(({ number, wire, instead }) =>
      line(
        "given twice",
        number,
        `${wireInWords(wire)}; ${instead} stays with the conductor above it in the file, so put a new label on this one`,
      ),
    ),
    ...hints(file, added, retired),
    ...(nameless > 0
      ? [
          `  ${counted(nameless, "conductor")} without a name: only a circuit with a name of its own keeps its number, so give it one.`,
        ]
      : []),
    "",
  ].join("\n");
}

/** A renamed circuit looks like a removed one and a new one, and only people know which it is. */
function hints(file: string, added: readonly NumberedWire[], retired: NumberedWires["retired"]): string[] {
  const alike = retired.find(({ identity: gone }) =>
    added.some(
      ({ identity }) => identity.role === gone.role && identity.from === gone.from && identity.to === gone.to,
    ),
  );
  if (!alike) return [];
  return [
    `  Is a new circuit a retired one under another name? Then give its line in ${file} the retired number (such as ${alike.number}), take the retired line out, and run this again.`,
  ];
}

function wireInWords({ name, role, from, to }: Wire): string {
  const what = role === "cable" ? name : `${name}, ${role}`;
  return `${what} (${endInWords(from)} → ${endInWords(to)})`;
}

function line(what: string, number: number, words: string): string {
  return `  ${what.padEnd(11)} ${String(number).padStart(4)}  ${printable(words)}`;
}
