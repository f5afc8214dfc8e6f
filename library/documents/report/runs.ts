import type { Protection, Run } from "../../model/run.ts";
import { sizeInWords } from "../../rules/fixes/sized-fix.ts";
import type { JudgedRun } from "../../rules/rule.ts";
import { formatExact, formatRounded, withUnit } from "../../rules/wording/format-number.ts";
import { lengthInWords } from "../../rules/wording/property-paths.ts";
import type { Cell, Column, Table } from "../table.ts";
import { numberColumn, quantity, tableBlock, textColumn, valueAndLimit } from "./cells.ts";
import type { Chapter, ReportContext } from "./chapter.ts";
import { everyRun } from "./every-run.ts";
import { numbersAbout } from "./numbered-findings.ts";

/** The current in every run, against its ampacity, the drop along it, and its protective device. */
export function runsChapter(context: ReportContext): Chapter {
  const results = new Map(context.judgement.circuits.map(({ circuit, result }) => [circuit, result]));
  const all = everyRun(context.judgement).map(
    (circuit): RunRow => ({ circuit, result: results.get(circuit) }),
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
  readonly result: JudgedRun["result"] | undefined;
}

function circuitTable(circuits: readonly RunRow[], { numbered }: ReportContext): Table {
  return {
    id: "circuits",
    title: "Circuits",
    notes: [
      "Drop: of the circuit's own two conductors, out and back, at the temperature of the conductor; in percent of the nominal voltage. The drop on the whole path from the bank has a table of its own.",
      ...(circuits.some(({ result }) => result?.drop.overloaded)
        ? [
            "At least: the conductor is above its ampacity, or its ampacity was not judged; it can get hotter than was worked out, and lose more than is shown.",
          ]
        : []),
    ],
    columns: [
      textColumn("name", "Circuit"),
      textColumn("conductor", "Conductor"),
      numberColumn("oneWayM", "One way"),
      ...heatColumns,
      numberColumn("dropV", "Drop, V"),
      numberColumn("dropPercent", "Drop, %"),
      numberColumn("dropLimitPercent", "Limit, %"),
      textColumn("protection", "Fuse or breaker"),
      numberColumn("allowedA", "Allowed, A"),
      textColumn("findings", "Findings"),
    ],
    rows: circuits.map((judged) => {
      const { circuit } = judged;
      const oneWayM = (circuit.positiveM + circuit.negativeM) / 2;
      return [
        circuit.name,
        conductorInWords(circuit),
        { value: oneWayM, text: lengthInWords(circuit, oneWayM) },
        ...heatCells(judged),
        ...dropCells(judged),
        devicesInWords(circuit),
        allowed(judged),
        numbersAbout(numbered, circuit.name),
      ];
    }),
  };
}

function cableTable(cables: readonly RunRow[], { numbered }: ReportContext): Table {
  return {
    id: "cables",
    title: "Cables",
    notes: [
      "A cable is one conductor. Its drop counts in the whole path from the bank, which has the limit.",
    ],
    columns: [
      textColumn("name", "Cable"),
      textColumn("conductor", "Conductor"),
      numberColumn("lengthM", "Length"),
      ...heatColumns,
      numberColumn("dropV", "Drop, V"),
      textColumn("protection", "Fuse or breaker"),
      numberColumn("allowedA", "Allowed, A"),
      textColumn("findings", "Findings"),
    ],
    rows: cables.map((judged) => {
      const { circuit, result } = judged;
      return [
        circuit.name,
        conductorInWords(circuit),
        { value: circuit.positiveM, text: lengthInWords(circuit, circuit.positiveM) },
        ...heatCells(judged),
        result ? atLeast(result.drop.overloaded, quantity(result.drop.dropV)) : null,
        devicesInWords(circuit),
        allowed(judged),
        numbersAbout(numbered, circuit.name),
      ];
    }),
  };
}

const heatColumns: readonly Column[] = [
  numberColumn("currentA", "Current, A"),
  numberColumn("ampacityA", "May carry, A"),
  numberColumn("spareA", "Spare, A"),
  numberColumn("conductorC", "Conductor, °C"),
];

function heatCells({ circuit, result }: RunRow): readonly Cell[] {
  if (!result) return ["not worked out", null, null, null];
  const { ampacity, drop } = result;
  if (!ampacity.judged) return [quantity(circuit.loadA), "not judged", "not judged", "not judged"];
  const [current, may] = valueAndLimit(circuit.loadA, ampacity.ampacityA);
  const temperature = drop.overloaded
    ? `above ${formatRounded(ampacity.columnC)}`
    : { value: drop.conductorC, text: formatRounded(drop.conductorC) };
  return [current, may, quantity(ampacity.ampacityA - circuit.loadA), temperature];
}

function dropCells({ circuit, result }: RunRow): readonly Cell[] {
  if (!result) return ["not worked out", null, quantity(circuit.dropLimitPercent)];
  const { dropV, dropPercent, dropLimitPercent, overloaded } = result.drop;
  const [percent, limit] = valueAndLimit(dropPercent, dropLimitPercent);
  return [atLeast(overloaded, quantity(dropV)), atLeast(overloaded, percent), limit];
}

function atLeast(overloaded: boolean, cell: Cell): Cell {
  if (!overloaded || cell === null || typeof cell === "string") return cell;
  return { value: cell.value, text: `at least ${cell.text}` };
}

/** "4 AWG, 105 °C"; an insulation that is not stated is marked. */
function conductorInWords({ conductor, insulationC, insulationStated }: Run): string {
  return `${sizeInWords(conductor)}, ${withUnit(insulationC, "°C")}${insulationStated ? "" : " taken"}`;
}

/** "50 A, UL 248-15 Class T"; "none" is as much a fact as a rating. */
function devicesInWords({ protection, protectionFarEnd }: Run): string {
  const near = protection && deviceInFull(protection);
  const far = protectionFarEnd && `${deviceInFull(protectionFarEnd)}, at the far end`;
  return [near, far].filter(Boolean).join("; ") || "none";
}

export function deviceInFull({ ratingA, family }: Protection): string {
  return `${formatExact(ratingA)} A${family ? `, ${family}` : ""}`;
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
