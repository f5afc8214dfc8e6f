import type { LengthUnit } from "./length-unit.ts";
import { isWired, readNetworkRecords } from "./network-records.ts";
import { remainsOf } from "./network-remains.ts";
import type { Layout } from "./placement/layout.ts";
import { readLayout } from "./placement/read-layout.ts";
import type { Ways } from "./placement/run-way.ts";
import type { PlanModel } from "./plan-model.ts";
import { readBuild } from "./read-build.ts";
import { readCircuit } from "./read-circuit.ts";
import { readNetwork, stopsNetwork } from "./read-network.ts";
import { readPeriods } from "./read-periods.ts";
import type { PlanRecord } from "./record.ts";
import type { InvalidValue, Run } from "./run.ts";
import { lengthUnitOf } from "./unit-of-plan.ts";

/** Finds the ways of the runs of a layout. Their lengths include the slack of the build, and are shown in that unit. */
type WaysOf = (layout: Layout, slackPercent: number, unit: LengthUnit) => Ways;

/**
 * Makes circuits and a network from the records of a plan: every value checked, every default filled in, lengths in metres.
 * Bad values never throw; they are returned beside the usable ones, each with its place and the allowed values.
 * A circuit is judged only if no refused value could make one of its figures wrong; the network, only if none of its values
 * was refused, except those of circuits with a load of their own, without which it is judged. The part of an unread network that
 * can be judged all the same is in `remains`.
 *
 * `waysOf`: finds the ways of the runs of a layout; a run whose plan states no length takes it from there. Without either, its length
 * is unknown.
 */
export function readModel(records: readonly PlanRecord[], waysOf?: WaysOf): PlanModel {
  const build = readBuild(records);
  const found = readNetworkRecords(records, new Set());
  const { layout, invalid: ofLayout } = readLayout(records, found, build.values);
  const lengthUnit = lengthUnitOf(records, layout);
  const ways: Ways = (layout && waysOf?.(layout, build.settings.bench.slackPercent, lengthUnit)) ?? new Map();
  const read = readNetwork(records, build, { ways, found });
  const { network, unread: networkUnread, circuits: wired, withoutCircuits, invalid: refused } = read;
  const circuits: Run[] = [];
  const unjudged: { readonly record: number; readonly name: string }[] = [];
  const stopping = (refusals: readonly InvalidValue[]) =>
    refusals.map((refusal): InvalidValue => {
      if (!stopsNetwork(refusal)) return refusal;
      if (withoutCircuits.has(refusal.record))
        return network ? { ...refusal, leavesOutCircuit: true } : refusal;
      return networkUnread ? { ...refusal, stopsNetwork: true } : refusal;
    });
  const ofBuild = networkUnread && build.missed.size > 0 ? stopping(build.invalid) : build.invalid;
  const { periods, invalid: ofPeriods } = readPeriods(records);
  const invalid: InvalidValue[] = [...ofBuild, ...stopping(refused), ...ofPeriods, ...ofLayout];
  records.forEach((record, index) => {
    if (record.word !== "circuit") return;
    if (isWired(record)) {
      const { name, circuit } = wired.get(index)!;
      // Without the network, the current to the part at its end is unknown.
      if (circuit && (network || circuit.statesLoad)) circuits.push(circuit);
      else unjudged.push({ record: index, name });
      return;
    }
    const { name, circuit, invalid: wrong } = readCircuit(record, index, build);
    if (circuit) circuits.push(circuit);
    else unjudged.push({ record: index, name });
    for (const refusal of wrong) invalid.push({ record: index, name, ...refusal });
  });
  const remains = remainsOf(records, { build, ways }, read);
  return {
    withoutCircuits: network ? [...withoutCircuits.values()] : [],
    ...{ build: build.settings, circuits, periods, layout, lengthUnit, network, networkUnread, remains },
    unjudged,
    invalid,
  };
}
