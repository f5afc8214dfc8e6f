import { disjointSets } from "./disjoint-sets.ts";
import type { LoadOfCircuit, PartDraft } from "./draft-part.ts";
import { makeLoadOfCircuit, makePart, type PartContext } from "./make-parts.ts";
import type { Network, Part } from "./network.ts";
import type { NetworkRecords } from "./network-records.ts";
import type { Ways } from "./placement/run-way.ts";
import { placeDevices } from "./protective-devices.ts";
import type { ReadBuild } from "./read-circuit.ts";
import { type ReadNetwork, readNetwork, stateConductors, stopsNetwork } from "./read-network.ts";
import { defaultVoltage } from "./read-run.ts";
import { builtInScenarios } from "./read-scenarios.ts";
import type { PlanRecord } from "./record.ts";
import { joinedInside } from "./wiring.ts";

/** The parts of an unread network that can be judged all the same. */
export interface NetworkRemains {
  /** The islands to which no record with a refused value belongs: judged as any network. Undefined if there are none. */
  readonly sound: Network | undefined;
  /**
   * All records without a refused value, connected as far as is known; a part with one has its terminals only. It shows the least
   * current that a single device causes in a conductor, and no other result.
   */
  readonly sketch: Network;
}

/** Undefined for a network that was read, and if a value of the build was refused: it may be a default of any record. */
export function remainsOf(
  records: readonly PlanRecord[],
  { build, ways }: { readonly build: ReadBuild; readonly ways: Ways },
  { draft, circuits, withoutCircuits, invalid }: ReadNetwork,
): NetworkRemains | undefined {
  if (!draft) return undefined;
  const broken = new Set(invalid.filter(stopsNetwork).map(({ record }) => record));
  for (const [record, { circuit }] of circuits) if (!circuit) broken.add(record);
  const gaps = new Set([...broken].filter((record) => !withoutCircuits.has(record)));
  const leftOut = recordsInGaps(draft.found, gaps, withoutCircuits);
  return {
    sound: leftOut && readNetwork(records, build, { ways, leftOut }).network,
    sketch: sketchOf({ ...draft, circuits, broken, ways }),
  };
}

/**
 * The records of the islands that a broken record belongs to. Undefined if that may be any of them: a scenario may concern every
 * part, and a conductor without known ends may lead anywhere.
 */
function recordsInGaps(
  { parts, cables, circuits, terminals, scenarios, mountedOn, byRecord }: NetworkRecords,
  broken: ReadonlySet<number>,
  withoutCircuits: ReadNetwork["withoutCircuits"],
): ReadonlySet<number> | undefined {
  const readable = circuits.filter(({ record }) => !withoutCircuits.has(record));
  const runs = [...cables, ...readable];
  const isAnywhere =
    scenarios.some(({ record }) => broken.has(record)) ||
    runs.some(({ ends }) => !ends) ||
    parts.some((part) => part.word !== "circuit" && !part.terminals);
  if (isAnywhere) return undefined;
  const partAt = (terminal: number) => terminals[terminal]!.part;
  const islands = disjointSets(parts.length);
  for (const { ends } of cables) islands.union(partAt(ends!.from), partAt(ends!.to));
  for (const { ends, load } of readable) {
    for (const far of [ends!.returnTo, ends!.to?.positive ?? load?.positive])
      if (far !== undefined) islands.union(partAt(ends!.from), partAt(far));
  }
  for (const [record, terminal] of mountedOn) islands.union(byRecord.get(record)!.index, partAt(terminal));
  const placed = [
    ...parts.map(({ record, index }) => ({ record, part: index })),
    ...runs.map(({ record, ends }) => ({ record, part: partAt(ends!.from) })),
  ];
  const gaps = new Set(
    placed.flatMap(({ record, part }) => (broken.has(record) ? [islands.find(part)] : [])),
  );
  return new Set(placed.flatMap(({ record, part }) => (gaps.has(islands.find(part)) ? [record] : [])));
}

interface Sketched extends NonNullable<ReadNetwork["draft"]> {
  readonly circuits: ReadNetwork["circuits"];
  readonly broken: ReadonlySet<number>;
  readonly ways: Ways;
}

function sketchOf({ found, circuits, surroundings, broken, ways }: Sketched): Network {
  const parts = found.parts.map((draft): Part => {
    if (draft.word === "circuit") {
      const circuit = circuits.get(draft.record)?.circuit;
      return circuit ? makeLoadOfCircuit(draft, circuit) : terminalsOnly(draft);
    }
    if (draft.terminals && !broken.has(draft.record)) return makePart(draft, surroundings);
    return draft.word === "battery" ? anyBattery(draft, surroundings) : terminalsOnly(draft);
  });
  const { conductors, devices } = placeDevices(
    stateConductors(found, circuits, { surroundings, ways }, broken),
    parts,
  );
  const stated = builtInScenarios({
    parts,
    runsAlways: new Set(),
    meant: () => undefined,
    systemV: surroundings.build.voltage ?? defaultVoltage,
    bankNominalV: ({ nominalV }) => nominalV,
  });
  const scenarios = stated.map(({ scenario }) => scenario);
  return { terminals: found.terminals, parts, conductors, devices, scenarios };
}

/** The terminals, and the connections between them that are one piece of metal. */
function terminalsOnly(draft: PartDraft | LoadOfCircuit): Part {
  const { index, record, name } = draft;
  const terminals =
    draft.word === "circuit"
      ? { positive: draft.positive, negative: draft.negative }
      : Object.fromEntries(draft.terminals ?? []);
  const joins = joinedInside(draft).map((between) => ({ between, ohm: 0 }));
  return { kind: "part", index, record, name, terminals, joins, accept: {} };
}

/** It supplies the devices with any figures; only how batteries in parallel share the current depends on them. */
function anyBattery(draft: PartDraft & { readonly word: "battery" }, surroundings: PartContext): Part {
  const usual = { chemistry: "AGM", capacityAh: 100 } as const;
  return makePart({ ...draft, values: { ...usual, ...draft.values } }, surroundings);
}
