import type { Circuit, InvalidValue, PlanModel } from "./circuit.ts";
import { readBuild } from "./read-build.ts";
import { readCircuit } from "./read-circuit.ts";
import type { PlanRecord } from "./record.ts";

/**
 * Makes circuits of what a plan left behind when it ran: every value checked, every default filled in, lengths in metres.
 * Bad values never throw; they come back beside what could be used, each with its place and what is allowed there.
 * A circuit is judged only if nothing that was refused could make one of its figures wrong.
 */
export function readModel(records: readonly PlanRecord[]): PlanModel {
  const build = readBuild(records);
  const circuits: Circuit[] = [];
  const unjudged: { readonly record: number; readonly name: string }[] = [];
  const invalid: InvalidValue[] = [...build.invalid];
  records.forEach((record, index) => {
    if (record.word !== "circuit") return;
    const read = readCircuit(record, index, build);
    if (read.circuit) circuits.push(read.circuit);
    else unjudged.push({ record: index, name: read.name });
    for (const refusal of read.invalid) invalid.push({ record: index, name: read.name, ...refusal });
  });
  return { build: build.settings, circuits, network: undefined, networkUnread: false, unjudged, invalid };
}
