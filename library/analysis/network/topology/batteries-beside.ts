import { disjointSets } from "../../../model/disjoint-sets.ts";
import { internalConnections } from "../../../model/internal-connections.ts";
import type { BatteryPart, Network, Part } from "../../../model/network.ts";
import { isStarterMotor } from "../../../model/part-roles.ts";
import { hasContacts } from "../../../model/switch-positions.ts";
import { workedOutOnce } from "../../../model/worked-out-once.ts";
import { holdsOneOf } from "../../first-index.ts";
import { groupedBy } from "../../grouped-by.ts";
import { graphInState, networkGraph } from "./network-graph.ts";
import { portsOf } from "./ports.ts";
import { spanningForest } from "./spanning-forest.ts";

/** The terminals of a source. */
interface Poles {
  readonly positive: number;
  readonly negative: number;
}

/** The batteries that conductors and closed switches connect with the positive terminal of a source. */
export function batteriesBeside(
  network: Network,
  { positive }: Pick<Poles, "positive">,
): readonly BatteryPart[] {
  return batteriesByComponent(network).get(networkGraph(network).componentOf[positive]!) ?? [];
}

const batteriesByComponent = workedOutOnce((network: Network) => {
  const { componentOf } = networkGraph(network);
  const batteries = network.parts.filter((part): part is BatteryPart => part.kind === "battery");
  return groupedBy(batteries, ({ terminals }) => componentOf[terminals.positive]!);
});

/**
 * The switches that can cut a source off from every battery: those beside its piece of the network when all are open. None if a battery
 * stays connected with it, plus and minus, or if there is no battery at all. The input of a DC-DC charger counts as a battery. Breakers
 * are taken as closed: they open in a fault.
 */
export function switchesBeforeBatteries(network: Network, { positive, negative }: Poles): readonly Part[] {
  const { componentOf, held, besides } = piecesWithSwitchesOpen(network);
  const [plus, minus] = [componentOf[positive]!, componentOf[negative]!];
  if (batteriesBeside(network, { positive }).length === 0 || held(plus) === held(minus)) return [];
  return [...new Set([plus, minus].flatMap((piece) => [...(besides.get(piece) ?? [])]))];
}

const piecesWithSwitchesOpen = workedOutOnce((network: Network) => {
  const switches = network.parts.filter(hasContacts);
  const { componentOf, components } = graphInState(network, (part) => ({ closed: !hasContacts(part) }));
  const throughBatteries = disjointSets(components);
  for (const part of network.parts)
    for (const [one, other] of holdingPoles(part))
      throughBatteries.union(componentOf[one]!, componentOf[other]!);
  const besides = new Map<number, Set<Part>>();
  for (const part of switches)
    for (const { between } of internalConnections(part)) {
      const pieces = between.map((terminal) => componentOf[terminal]!);
      if (pieces[0] === pieces[1]) continue;
      for (const piece of pieces) besides.set(piece, (besides.get(piece) ?? new Set()).add(part));
    }
  return { componentOf, held: throughBatteries.find, besides };
});

/** The pairs of poles that hold the voltage of a source. */
function holdingPoles(part: Part): readonly (readonly [number, number])[] {
  if (part.kind === "battery") return [[part.terminals.positive, part.terminals.negative]];
  if (part.kind === "dcDcCharger") return [[part.terminals.inputPositive, part.terminals.inputNegative]];
  return [];
}

/** Whether a relay connects two pieces of the network that each have a battery of their own, as a charging relay does. */
export function joinsBatteries(
  network: Network,
  { terminals: { line, load } }: Extract<Part, { kind: "relay" }>,
): boolean {
  const { componentOf, held } = piecesWithRelaysOpen(network);
  const [one, other] = [componentOf[line]!, componentOf[load]!];
  return one !== other && held.has(one) && held.has(other);
}

/**
 * Whether a battery is the one that an engine keeps full before a charging relay: an alternator is beside it, nothing draws from it, and the
 * relay connects it with another battery.
 */
export function isKeptFullByRelay(network: Network, { terminals: { positive } }: BatteryPart): boolean {
  const { componentOf, charged, drawing } = piecesWithRelaysOpen(network);
  const own = componentOf[positive]!;
  if (!charged.has(own) || drawing.has(own)) return false;
  return network.parts.some(
    (part) =>
      part.kind === "relay" &&
      [part.terminals.line, part.terminals.load].some((end) => componentOf[end] === own) &&
      joinsBatteries(network, part),
  );
}

/** Whether batteries are on both sides of a conductor, every switch closed: its current is not that of a load alone. */
export function isBetweenBatteries(network: Network, conductor: number): boolean {
  const { forest, orders } = forestFromBatteries(network);
  const child = forest.behind[conductor]!;
  return child !== -1 && holdsOneOf(orders, forest.order[child]!, forest.last[child]!);
}

const forestFromBatteries = workedOutOnce((network: Network) => {
  const { graph, pointOf } = networkGraph(network);
  const positives = network.parts.flatMap((part) =>
    part.kind === "battery" ? [pointOf[part.terminals.positive]!] : [],
  );
  const forest = spanningForest(graph, positives, () => true);
  return { forest, orders: Int32Array.from(positives, (point) => forest.order[point]!).sort() };
});

/** Pieces of metal with every relay open, and those at which a battery, an alternator or a device for hours has its plus. */
const piecesWithRelaysOpen = workedOutOnce((network: Network) => {
  const { componentOf } = graphInState(network, ({ kind }) => ({ closed: kind !== "relay" }));
  const piecesOf = (parts: readonly Part[]) =>
    new Set(parts.flatMap((part) => portsOf(part).map(({ positive }) => componentOf[positive]!)));
  const ofKind = (kind: Part["kind"]) => network.parts.filter((part) => part.kind === kind);
  const draws = (part: Part) =>
    part.kind !== "dcDcCharger" &&
    !isStarterMotor(part) &&
    portsOf(part).some(({ does }) => does === "draws");
  return {
    componentOf,
    held: piecesOf(ofKind("battery")),
    charged: piecesOf(ofKind("alternator")),
    drawing: piecesOf(network.parts.filter(draws)),
  };
});
