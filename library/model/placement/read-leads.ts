import type { CableValues } from "../cable-properties.ts";
import type { CircuitValues } from "../circuit-properties.ts";
import type { NetworkRecords } from "../network-records.ts";
import type { Lead, LeadEnd } from "./layout.ts";
import { type LayoutContext, referred } from "./layout-context.ts";

/** Every conductor whose ends are known, in the order of the plan, each with its stud or branch at both ends. */
export function readLeads(found: NetworkRecords, context: LayoutContext): readonly Lead[] {
  const studs = studCounter();
  const drafts = draftLeads(found);
  // Studs that the plan names are taken; the others follow in their order.
  for (const { ends } of drafts)
    for (const { terminal, stud } of ends) if (stud !== undefined) studs.take(terminal, stud - 1);
  return drafts.map(({ record, name, role, ends, values }, index): Lead => {
    const endAt = ({ terminal, stud }: DraftEnd): LeadEnd => ({
      body: found.terminals[terminal]!.part,
      terminal: found.terminals[terminal]!.name,
      stud: stud === undefined ? studs.next(terminal) : stud - 1,
    });
    const through = values.through?.flatMap((written, at) => {
      const path = ["through", String(at)];
      const channel = referred(written, "channel", { record, name, path }, context);
      return channel === undefined ? [] : [channel];
    });
    return {
      record,
      name,
      role,
      index,
      from: endAt(ends[0]),
      to: endAt(ends[1]),
      paired: role !== "cable" && (values.sheathed ?? false) !== false,
      wires: values.parallel ?? 1,
      ...(through && { through }),
      ...(values.outsideMm !== undefined && { outsideMm: values.outsideMm }),
    };
  });
}

interface DraftLead extends Pick<Lead, "record" | "name" | "role"> {
  readonly ends: readonly [DraftEnd, DraftEnd];
  readonly values: CableValues | CircuitValues;
}

interface DraftEnd {
  /** Index in the network's terminals. */
  readonly terminal: number;
  /** As the plan states it, counted from 1. */
  readonly stud?: number | undefined;
}

function draftLeads({ circuits, cables }: NetworkRecords): readonly DraftLead[] {
  const pairs = circuits.flatMap(({ record, name, values, ends, load }): readonly DraftLead[] => {
    const far = ends?.to ?? load;
    if (!ends || !far) return [];
    const { fromStud, toStud } = values;
    const { from, returnTo } = ends;
    const there: DraftLead["ends"] = [{ terminal: from, stud: fromStud }, { terminal: far.positive }];
    const back: DraftLead["ends"] = [{ terminal: far.negative }, { terminal: returnTo, stud: toStud }];
    return [
      { record, name, values, role: "positive", ends: there },
      { record, name, values, role: "return", ends: back },
    ];
  });
  const single = cables.flatMap(({ record, name, values, ends }): readonly DraftLead[] => {
    if (!ends) return [];
    const { fromStud, toStud } = values;
    const both: DraftLead["ends"] = [
      { terminal: ends.from, stud: fromStud },
      { terminal: ends.to, stud: toStud },
    ];
    return [{ record, name, values, role: "cable", ends: both }];
  });
  return [...pairs, ...single].sort((one, other) => one.record - other.record);
}

/** The studs of each terminal that are taken, and the first that may be free. */
function studCounter() {
  const counters = new Map<number, { readonly taken: Set<number>; free: number }>();
  const at = (terminal: number) => {
    const counter = counters.get(terminal) ?? { taken: new Set<number>(), free: 0 };
    counters.set(terminal, counter);
    return counter;
  };
  return {
    take: (terminal: number, stud: number) => void at(terminal).taken.add(stud),
    next(terminal: number): number {
      const counter = at(terminal);
      while (counter.taken.has(counter.free)) counter.free++;
      return counter.free++;
    },
  };
}
