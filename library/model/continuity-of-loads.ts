import type { Part } from "./network.ts";
import { isDevice } from "./part-roles.ts";
import { descriptorOf } from "./parts/index.ts";
import type { StatedConductor } from "./protective-devices.ts";
import type { Run } from "./run.ts";

interface ReadConductors {
  readonly conductors: readonly StatedConductor[];
  readonly parts: readonly Part[];
  /** The records of circuits, cables, devices and loads that state `continuous` themselves. */
  readonly stating: ReadonlySet<number>;
}

/**
 * Whether a load runs for hours also holds for the conductors that carry its current alone, and for the fuses and breakers in
 * them, unless they state it themselves. These are the conductors at its two terminals, and on through parts in the line, as long
 * as nothing else is connected there. A circuit that states it counts for the load at its end.
 */
export function withContinuityOfLoads({ conductors, parts, stating }: ReadConductors): {
  readonly conductors: readonly StatedConductor[];
  readonly parts: readonly Part[];
} {
  // All others have the same default.
  if (stating.size === 0) return { conductors, parts };
  const loads = parts.filter((part) => part.kind === "load");
  const lines = linesOf(conductors, parts);
  const changedParts = new Map<number, Part>();
  const changedRuns = new Map<Run, Run>();
  for (const load of loads) {
    const line = [load.terminals.positive, load.terminals.negative].map((terminal) =>
      lines.from(load, terminal),
    );
    const own = line.map(({ runs }) => runs[0]).find((run) => run && stating.has(run.record));
    const continuous = own && !stating.has(load.record) ? own.continuous : load.continuous;
    if (continuous !== load.continuous) changedParts.set(load.index, { ...load, continuous });
    for (const { runs, devices } of line) {
      for (const run of runs)
        if (!stating.has(run.record) && run.continuous !== continuous)
          changedRuns.set(run, { ...run, continuous, continuousStated: true });
      for (const device of devices)
        if (!stating.has(device.record) && device.continuous !== continuous)
          changedParts.set(device.index, { ...device, continuous });
    }
  }
  return {
    conductors: conductors.map((conductor) => {
      const run = changedRuns.get(conductor.run);
      return run ? { ...conductor, run } : conductor;
    }),
    parts: changedParts.size === 0 ? parts : parts.map((part) => changedParts.get(part.index) ?? part),
  };
}

function linesOf(conductors: readonly StatedConductor[], parts: readonly Part[]) {
  const at = new Map<number, StatedConductor[]>();
  const mounted = new Set(parts.flatMap((part) => (isDevice(part) ? (part.mountedOn ?? []) : [])));
  const ofTerminal = new Map<number, Part>();
  for (const part of parts)
    for (const terminal of Object.values(part.terminals)) ofTerminal.set(terminal, part);
  for (const conductor of conductors)
    for (const end of [conductor.from, conductor.to]) at.set(end, [...(at.get(end) ?? []), conductor]);
  /** The conductor that is alone at a terminal. */
  const aloneAt = (terminal: number): StatedConductor | undefined => {
    const [only, another] = at.get(terminal) ?? [];
    return another || mounted.has(terminal) ? undefined : only;
  };
  return {
    /** What carries the current of a part at one of its terminals, and no other. */
    from(part: Part, terminal: number) {
      const runs: Run[] = [];
      const devices: Extract<Part, { readonly continuous: boolean; readonly milliohm: number }>[] = [];
      const passed = new Set([part]);
      for (let end: number | undefined = terminal; end !== undefined; ) {
        const conductor = aloneAt(end);
        if (!conductor) break;
        runs.push(conductor.run);
        const far: number = conductor.from === end ? conductor.to : conductor.from;
        const next: Part | undefined = ofTerminal.get(far);
        if (!next || passed.has(next) || !aloneAt(far) || !inLine(next)) break;
        passed.add(next);
        if (isDevice(next)) devices.push(next);
        end = Object.values(next.terminals).find((other) => other !== far);
      }
      return { runs, devices };
    },
  };
}

/** It has two terminals, and the current of one is that of the other. */
function inLine(part: Part): boolean {
  return descriptorOf(part).inSeries === true && Object.keys(part.terminals).length === 2;
}
