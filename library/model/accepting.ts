import { thingsOfLayout } from "./placement/things-of-layout.ts";
import type { PlanModel } from "./plan-model.ts";
import type { Run } from "./run.ts";

/** Every run, part, surface, channel and compartment, with the findings that the plan accepts for it; each record once. */
export function acceptingIn({ circuits, network, remains, layout }: PlanModel): readonly Accepting[] {
  const { conductors, parts } = network ?? remains?.sketch ?? { conductors: [], parts: [] };
  const all = [...circuits, ...conductors.map(({ run }) => run), ...parts, ...thingsOfLayout(layout)];
  const byRecord = new Map<number, Accepting>();
  // The load that a circuit states itself has the record of the circuit.
  for (const one of all) if (!byRecord.has(one.record)) byRecord.set(one.record, one);
  return [...byRecord.values()];
}

type Accepting = Pick<Run, "record" | "name" | "accept">;
