import { endInWords } from "../../library/documents/schedules/cells.ts";
import { identityInFile } from "../../library/documents/schedules/wire-identity.ts";
import {
  canBeKept,
  type NumberedWire,
  type NumberedWires,
} from "../../library/documents/schedules/wire-numbers.ts";
import { wireNumbersFile } from "../../library/documents/schedules/wire-numbers-file.ts";
import type { Wire } from "../../library/documents/schedules/wires.ts";
import { counted } from "../../library/rules/wording/format-number.ts";
import { numberedWires } from "../evaluate/files/kept-numbers.ts";
import { keepNumbers, numbersToKeep, whyNotNumbered } from "../output/keep-numbers.ts";
import { eachCheckedPlan, type OpenedPlan, shownFile } from "./checked-plans.ts";
import type { Command } from "./command.ts";
import type { ExitCode, Host } from "./host.ts";
import { printable } from "./terminal.ts";

/** `loomwright number`: a number for every conductor, kept beside the plan. No other command writes that file. */
export const number: Command = {
  name: "number",
  usage: [
    {
      words: "[files or folders]",
      does: "give every conductor a permanent number, and keep it beside the plan",
    },
  ],
  takes: ["dry-run"],
  run: (names, given, outside) =>
    eachCheckedPlan(names, outside, (opened) => numberPlan(opened, given["dry-run"] ?? false, outside)),
};

async function numberPlan(opened: OpenedPlan, dryRun: boolean, outside: Host): Promise<ExitCode> {
  const { plan, workspace } = opened;
  const uri = wireNumbersFile(plan.root);
  const file = printable(shownFile(uri, outside.cwd));
  const { numbered, kept } = numberedWires(plan, workspace);
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
    ({ before, identity }) => before && identityInFile(before.identity) !== identityInFile(identity),
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
