import { isWired } from "./network-records.ts";
import { readBuild } from "./read-build.ts";
import { readCircuit } from "./read-circuit.ts";
import { readNetwork, stopsNetwork } from "./read-network.ts";
import type { PlanRecord } from "./record.ts";
import type { InvalidValue, PlanModel, Run } from "./run.ts";

/**
 * Makes circuits and a network of what a plan left behind when it ran: every value checked, every default filled in, lengths in
 * metres. Bad values never throw; they come back beside what could be used, each with its place and what is allowed there.
 * A circuit is judged only if nothing that was refused could make one of its figures wrong; the network, only if nothing of it
 * was refused. Without it, its circuits are judged by the load that they state themselves, as if they stood alone.
 */
export function readModel(records: readonly PlanRecord[]): PlanModel {
  const build = readBuild(records);
  const { network, unread: networkUnread, circuits: wired, invalid: refused } = readNetwork(records, build);
  const circuits: Run[] = [];
  const unjudged: { readonly record: number; readonly name: string }[] = [];
  const stopping = (refusals: readonly InvalidValue[]) =>
    refusals.map(
      (refusal): InvalidValue => (stopsNetwork(refusal) ? { ...refusal, stopsNetwork: true } : refusal),
    );
  const ofBuild = networkUnread && build.missed.size > 0 ? stopping(build.invalid) : build.invalid;
  const invalid: InvalidValue[] = [...ofBuild, ...stopping(refused)];
  records.forEach((record, index) => {
    if (record.word !== "circuit") return;
    if (isWired(record)) {
      const { name, circuit } = wired.get(index)!;
      // Without the network, nobody knows what flows to the part where it ends.
      if (circuit && (network || circuit.statesLoad)) circuits.push(circuit);
      else unjudged.push({ record: index, name });
      return;
    }
    const read = readCircuit(record, index, build);
    if (read.circuit) circuits.push(read.circuit);
    else unjudged.push({ record: index, name: read.name });
    for (const refusal of read.invalid) invalid.push({ record: index, name: read.name, ...refusal });
  });
  return { build: build.settings, circuits, network, networkUnread, unjudged, invalid };
}
