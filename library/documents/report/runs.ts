import type { KnownDrop } from "../../analysis/circuit-result.ts";
import { oneWayM } from "../../analysis/copper-area.ts";
import { designCurrentA } from "../../analysis/design-current.ts";
import type { Network } from "../../model/network.ts";
import { type DevicePart, isDevice } from "../../model/part-roles.ts";
import type { Protection, Run } from "../../model/run.ts";
import { sizeOfRunInWords } from "../../rules/fixes/sized-fix.ts";
import { type JudgedRun, withKnownCurrent } from "../../rules/rule.ts";
import { familyInWords } from "../../rules/wording/family-in-words.ts";
import { exceeds, formatExact, formatRounded, withUnit } from "../../rules/wording/format-number.ts";
import { lengthInWords } from "../../rules/wording/lengths.ts";
import { notKnown } from "../../rules/wording/unknown-length.ts";
import type { Cell, Quantity, Table } from "../table.ts";
import { type ColumnOf, numbers, quantity, tableOf, words } from "../table-of.ts";
import { findingsAbout, quantityBeside, tableBlock } from "./cells.ts";
import type { Chapter, ReportContext } from "./chapter.ts";
import { everyRun } from "./every-run.ts";

/** The current in every run, against its ampacity, the drop along it, and its protective device. */
export function runsChapter(context: ReportContext): Chapter {
  const results = new Map(
    withKnownCurrent(context.judgement.circuits).map(({ circuit, result }) => [circuit, result]),
  );
  const endDevices = devicesAtEnds(context.judgement.network?.network);
  const all = everyRun(context.judgement).map(
    (circuit): RunRow => ({
      circuit,
      result: results.get(circuit),
      endDevices: endDevices.get(circuit.record) ?? [],
    }),
  );
  const of = (word: Run["word"]) => all.filter(({ circuit }) => circuit.word === word);
  const blocks = [
    ...tableBlock(circuitTable(of("circuit"), context)),
    ...tableBlock(cableTable(of("cable"), context)),
  ];
  return {
    id: "runs",
    title: "Circuits and cables",
    orientation: "landscape",
    blocks:
      blocks.length > 0
        ? [
            {
              kind: "paragraph",
              text: "Current is the greatest in a run in any scenario that lasts, or that a circuit states itself. May carry: the ampacity of the table after every factor, for all parallel wires. The temperature is that of the conductor at this current.",
            },
            ...blocks,
          ]
        : [{ kind: "paragraph", text: "The plan has no circuit and no cable that could be read." }],
  };
}

interface RunRow {
  readonly circuit: Run;
  /** Undefined: no current could be calculated in it. */
  readonly result: RunResult | undefined;
  /** Fuses and breakers that are parts of their own, at its ends. */
  readonly endDevices: readonly DevicePart[];
}

/** By record of the run. */
function devicesAtEnds(network: Network | undefined): ReadonlyMap<number, readonly DevicePart[]> {
  const found = new Map<number, DevicePart[]>();
  for (const { record, from, to } of network?.conductors ?? [])
    for (const terminal of [from, to]) {
      const part = network!.parts[network!.terminals[terminal]!.part]!;
      if (isDevice(part)) found.set(record, [...(found.get(record) ?? []), part]);
    }
  return found;
}

type RunResult = JudgedRun["result"];

function circuitTable(circuits: readonly RunRow[], { numbered }: ReportContext): Table {
  return tableOf<RunRow>(
    {
      id: "circuits",
      title: "Circuits",
      notes: [
        "Drop: of the circuit's own two conductors, out and back, at the temperature of the conductor; in percent of the nominal voltage. The drop on the whole path from the bank has a table of its own.",
        ...(circuits.some(({ result }) => result?.drop.overloaded)
          ? [
              "At least: the conductor is above its ampacity, or its ampacity was not judged; it can get hotter than was worked out, and lose more than is shown.",
            ]
          : []),
        ...(circuits.some(({ circuit }) => circuit.lengthsFrom === "unknown") ? [noLengthNote] : []),
      ],
    },
    [
      words("name", "Circuit", ({ circuit }) => circuit.name),
      words("conductor", "Conductor", ({ circuit }) => conductorInWords(circuit)),
      numbers("oneWayM", "One way", ({ circuit }) => lengthCell(circuit, oneWayM(circuit))),
      ...heatColumns,
      numbers("dropV", "Drop, V", (run) => dropCell(run) ?? "not worked out"),
      numbers("dropPercent", "Drop, %", ({ result }) =>
        ifDropKnown(result, ({ dropPercent, dropLimitPercent }) =>
          quantityBeside(dropPercent, dropLimitPercent),
        ),
      ),
      numbers("dropLimitPercent", "Limit, %", ({ circuit, result }) =>
        result?.drop.judged
          ? quantityBeside(result.drop.dropLimitPercent, result.drop.dropPercent)
          : quantity(circuit.dropLimitPercent),
      ),
      ...protectionColumns,
      findingsAbout(numbered, ({ circuit }) => circuit.name),
    ],
    circuits,
  );
}

function cableTable(cables: readonly RunRow[], { numbered }: ReportContext): Table {
  return tableOf<RunRow>(
    {
      id: "cables",
      title: "Cables",
      notes: [
        "A cable is one conductor. Its drop counts in the whole path from the bank, which has the limit.",
        ...(cables.some(({ circuit }) => circuit.lengthsFrom === "unknown") ? [noLengthNote] : []),
      ],
    },
    [
      words("name", "Cable", ({ circuit }) => circuit.name),
      words("conductor", "Conductor", ({ circuit }) => conductorInWords(circuit)),
      numbers("lengthM", "Length", ({ circuit }) => lengthCell(circuit, circuit.positiveM)),
      ...heatColumns,
      numbers("dropV", "Drop, V", dropCell),
      ...protectionColumns,
      findingsAbout(numbered, ({ circuit }) => circuit.name),
    ],
    cables,
  );
}

const noLengthNote =
  "Length not known: neither the plan nor a way states it; the drop, and that of every device behind, was not judged.";

const heatColumns: readonly ColumnOf<RunRow>[] = [
  numbers("currentA", "Current, A", ({ circuit, result }) => {
    if (!result) return "not worked out";
    const designA = designCurrentA(circuit);
    return result.ampacity.judged ? quantityBeside(designA, result.ampacity.ampacityA) : quantity(designA);
  }),
  numbers(
    "ampacityA",
    "May carry, A",
    ifJudged(({ ampacityA }, circuit) => quantityBeside(ampacityA, designCurrentA(circuit))),
  ),
  numbers(
    "spareA",
    "Spare, A",
    ifJudged(({ ampacityA }, circuit) => quantity(ampacityA - designCurrentA(circuit))),
  ),
  numbers(
    "conductorC",
    "Conductor, °C",
    ifJudged(({ columnC }, _, { conductorC }) =>
      exceeds(conductorC, columnC) ? `above ${formatRounded(columnC)}` : quantity(conductorC),
    ),
  ),
];

const protectionColumns: readonly ColumnOf<RunRow>[] = [
  words("protection", "Fuse or breaker", devicesInWords),
  numbers("allowedA", "Allowed, A", allowed),
];

/** A cell that needs the ampacity. */
function ifJudged(
  cell: (
    ampacity: Extract<RunResult["ampacity"], { readonly judged: true }>,
    circuit: Run,
    drop: RunResult["drop"],
  ) => Cell,
): (row: RunRow) => Cell {
  return ({ circuit, result }) => {
    if (!result) return null;
    return result.ampacity.judged ? cell(result.ampacity, circuit, result.drop) : "not judged";
  };
}

function lengthCell(circuit: Run, lengthM: number | undefined): Cell {
  return lengthM === undefined ? notKnown : { value: lengthM, text: lengthInWords(circuit, lengthM) };
}

function dropCell({ result }: RunRow): Cell {
  return ifDropKnown(result, ({ dropV }) => quantity(dropV));
}

function ifDropKnown(result: RunResult | undefined, cell: (drop: KnownDrop) => Quantity): Cell {
  if (!result) return null;
  const { drop } = result;
  if (!drop.judged) return "not judged";
  const known = cell(drop);
  return drop.overloaded ? { ...known, text: `at least ${known.text}` } : known;
}

/** "4 AWG, 105 °C"; an insulation that is not stated is marked. */
function conductorInWords({ insulationC, insulationStated, ...run }: Run): string {
  return `${sizeOfRunInWords(run)}, ${withUnit(insulationC, "°C")}${insulationStated ? "" : " taken"}`;
}

/** "50 A, UL 248-15 Class T"; "15 A, circuit breaker: pump breaker"; "none" is as much a fact as a rating. */
function devicesInWords({ circuit: { protection, protectionFarEnd }, endDevices }: RunRow): string {
  const near = protection && deviceInFull(protection);
  const far = protectionFarEnd && `${deviceInFull(protectionFarEnd)}, at the far end`;
  const own = endDevices.map((part) => `${deviceInFull(part)}: ${part.name}`);
  return [near, far, ...own].filter(Boolean).join("; ") || "none";
}

export function deviceInFull(protection: Protection): string {
  const family = familyInWords(protection);
  return `${formatExact(protection.ratingA)} A${family ? `, ${family}` : ""}`;
}

function allowed({ circuit, result }: RunRow): Cell {
  if (!result) return null;
  const { minA, maxA } = result.protection;
  if (maxA === undefined) return `${formatRounded(minA)} to ?`;
  // A cable without current of its own may have any rating up to the maximum.
  return maxA < minA
    ? "none"
    : circuit.loadA < 1e-3
      ? `up to ${formatRounded(maxA)}`
      : `${formatRounded(minA)} to ${formatRounded(maxA)}`;
}
