import type { Judgement } from "../../judge.ts";
import { listInWords } from "../../rules/wording/part-in-words.ts";
import { type FewerSizes, fewerSizesTable } from "../fewer-sizes.ts";
import type { Table } from "../table.ts";
import { cutList, spoolList } from "./cut-list.ts";
import { devicesOf } from "./devices.ts";
import { firstPower } from "./first-power.ts";
import { fuseMap } from "./fuse-map.ts";
import { labelTable } from "./labels.ts";
import { partsList } from "./parts-list.ts";
import type { NumberedWires } from "./wire-numbers.ts";
import { wireSchedule } from "./wire-schedule.ts";

/**
 * Every schedule and list of a plan, in the order of use at the bench. A plan whose network could not be read or solved has them
 * too, with words in place of a figure.
 */
export function benchDocuments(
  plan: Judgement,
  { wires }: NumberedWires,
  { scenario, fewerSizes }: BenchDocumentOptions = {},
): readonly Table[] {
  const { bench } = plan.model.build;
  const devices = devicesOf(plan, wires);
  const missing = missingIn(plan);
  const tables = [
    wireSchedule(wires, bench),
    cutList(wires, bench),
    spoolList(wires, bench),
    ...(fewerSizes ? [fewerSizes] : []),
    partsList(plan, devices, wires),
    fuseMap(plan, devices, wires),
    labelTable(wires),
    ...firstPower(plan, devices, wires, scenario),
  ];
  return tables.map((table) => ({ ...table, notes: [...missing, ...table.notes] }));
}

/** Items of the plan that no list can have, because one of their values cannot be used. */
function missingIn({ model }: Judgement): string[] {
  const notes: string[] = [];
  if (model.networkUnread)
    notes.push(
      "Not complete: a value of the network is invalid, so its parts and cables are missing here, and its circuits are taken as if each were alone. loomwright check names the value.",
    );
  const unread = new Map(
    [...model.unjudged, ...model.withoutCircuits].map(({ record, name }) => [record, name]),
  );
  if (unread.size > 0) {
    const names = listInWords([...unread.values()], 20);
    notes.push(`Not complete: a value of ${names} is invalid. loomwright check names it.`);
  }
  return notes;
}

export interface BenchDocumentOptions {
  /** Index in the network's scenarios, for the voltages to expect. */
  readonly scenario?: number | undefined;
  /** If the records of the plan are available to calculate it. */
  readonly fewerSizes?: Table | undefined;
}

/** The suggestion of fewer sizes to buy, even if there is none. */
export function fewerSizesInTable(found: FewerSizes | undefined): Table {
  const none = "No size can be spared without another finding, or the plan could not be read as a whole.";
  return fewerSizesTable(found ?? { changes: [], notes: [none], lengthUnit: "m" });
}
