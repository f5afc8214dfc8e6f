import type { Judgement } from "../../judge.ts";
import type { Table } from "../table.ts";
import type { NumberedWires } from "./wire-numbers.ts";
import { wireSchedule } from "./wire-schedule.ts";

/**
 * Every schedule and list of a plan, in the order in which they are needed at the bench. A plan whose network could not be read or
 * solved has them too, with words where a figure would stand.
 */
export function benchDocuments(plan: Judgement, numbered: NumberedWires): readonly Table[] {
  const { bench } = plan.model.build;
  return [wireSchedule(numbered.wires, bench)];
}
