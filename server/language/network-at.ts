import type { SupplyPath } from "../../library/analysis/network-result.ts";
import { isOfCircuit } from "../../library/documents/network-summary.ts";
import type { Network, NetworkConductor, Part, Scenario } from "../../library/model/network.ts";
import { isDevice } from "../../library/model/part-roles.ts";
import type { JudgedNetwork, JudgedPlan } from "../../library/rules/rule.ts";
import type { ValueAtPosition } from "../evaluate/checked-plan.ts";

/** The elements of the plan's network for the records at a place. */
export interface NetworkAt {
  readonly judged: JudgedNetwork;
  /** Parts of the plan as such; not the load that a circuit states itself. */
  readonly parts: readonly Part[];
  /** Conductors of cables, and positive ones of circuits, by index in the network. */
  readonly conductors: readonly number[];
  /** By index in the network. */
  readonly scenarios: readonly number[];
  /** The terminal named there: `from: house.positive`. */
  readonly terminal: number | undefined;
  /** The whole part named there: `to: inverter`. */
  readonly fed: Part | undefined;
}

/** Undefined if the plan has no network that could be read. */
export function networkAt({ network: judged }: JudgedPlan, spot: ValueAtPosition): NetworkAt | undefined {
  if (!judged) return undefined;
  const { network } = judged;
  const records = new Set([spot.record, ...spot.alsoSets]);
  return {
    judged,
    parts: network.parts.filter((part) => records.has(part.record) && !isOfCircuit(part)),
    conductors: network.conductors.flatMap(({ record, role }, index) =>
      role !== "return" && records.has(record) ? [index] : [],
    ),
    scenarios: network.scenarios.flatMap((scenario: Scenario, index) =>
      scenario.record !== undefined && records.has(scenario.record) ? [index] : [],
    ),
    terminal: terminalAt(network, spot),
    fed: partFedAt(network, spot),
  };
}

/** The conductors of a circuit or cable, by index in the network; the positive one first. */
export function conductorsOf({ network }: JudgedNetwork, record: number): readonly number[] {
  return network.conductors
    .flatMap((conductor, index) => (conductor.record === record ? [index] : []))
    .sort((one, other) => rank(network.conductors[one]) - rank(network.conductors[other]));
}

function rank(conductor: NetworkConductor | undefined): number {
  return conductor?.role === "return" ? 1 : 0;
}

/** The whole supply path to the device that each circuit of the network feeds, by the circuit's record. */
export function waysOfCircuits({ network, result }: JudgedNetwork): ReadonlyMap<number, SupplyPath> {
  const byPart = new Map(result.supplyPaths.map((way) => [way.part, way]));
  const byRecord = new Map<number, SupplyPath>();
  for (const { record, role, to } of network.conductors) {
    const way = role === "positive" ? byPart.get(network.terminals[to]!.part) : undefined;
    if (way) byRecord.set(record, way);
  }
  return byRecord;
}

/** `from: house.positive` of a cable or circuit, `to` of a cable, `returnTo` of a circuit, `on` of a fuse or breaker. */
function terminalAt({ conductors, parts }: Network, { record, path }: ValueAtPosition): number | undefined {
  const property = path[0];
  if (property === "on") return parts.filter(isDevice).find((part) => part.record === record)?.mountedOn;
  const conductor = conductors.find(
    (one) => one.record === record && (one.role === "return") === (property === "returnTo"),
  );
  if (property === "from") return conductor?.from;
  if (property === "to" && conductor?.role === "cable") return conductor.to;
  return property === "returnTo" ? conductor?.to : undefined;
}

/** `to: inverter` of a circuit names the whole part. */
function partFedAt(
  { conductors, terminals, parts }: Network,
  { record, path }: ValueAtPosition,
): Part | undefined {
  if (path[0] !== "to") return undefined;
  const positive = conductors.find((one) => one.record === record && one.role === "positive");
  return positive && parts[terminals[positive.to]!.part];
}
