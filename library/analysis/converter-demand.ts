import type { DcDcChargerPart, Network, Part, SolarControllerPart } from "../model/network.ts";
import { currentLimitsOf, givesEnergy, isConsumer } from "../model/part-roles.ts";
import type { ShoreChargerPart } from "../model/parts/shore-charger.ts";
import { groupedBy } from "./grouped-by.ts";
import { loadCurrentA } from "./load-current.ts";
import { networkGraph } from "./network/topology/network-graph.ts";
import { portsOf } from "./network/topology/ports.ts";
import { inverterSupplyA } from "./supply-current.ts";

type Converter = DcDcChargerPart | ShoreChargerPart | SolarControllerPart;

/** The loads on converters whose output no battery supports, in the scenario with the greatest demand. */
export interface ConverterDemand {
  /** Those that feed the same conductors. */
  readonly converters: readonly Converter[];
  /** Their rated output together, A. */
  readonly givesA: number;
  /** At their output voltage, A. */
  readonly demandA: number;
  /** Part indices, greatest demand first. */
  readonly devices: readonly number[];
  readonly scenario: number;
}

/**
 * Demand at the output voltage of the converters: a constant power and a resistance draw what they draw there. Starting motors count
 * with their running current. Scenarios in which none of the converters runs are left out.
 */
export function converterDemands(network: Network): readonly ConverterDemand[] {
  const converters = network.parts.filter(isConverter);
  if (converters.length === 0) return [];
  const { componentOf } = networkGraph(network);
  const at = (part: Part, does: "feeds" | "draws") =>
    portsOf(part)
      .filter((port) => port.does === does)
      .map(({ positive }) => componentOf[positive]!);
  const supported = new Set(
    network.parts
      .filter((part) => givesEnergy(part) && !isConverter(part))
      .flatMap((part) => at(part, "feeds")),
  );
  // Each of them feeds at one port, and each consumer draws at one.
  const byPiece = groupedBy(converters, (converter) =>
    at(converter, "feeds").find((piece) => !supported.has(piece)),
  );
  if (byPiece.size === 0) return [];
  const loadsIn = groupedBy(network.parts.filter(isConsumer), (part) => at(part, "draws")[0]);
  return [...byPiece].flatMap(([piece, there]) => greatestOf(network, there, loadsIn.get(piece) ?? []) ?? []);
}

/** A part that holds its rated output by itself; every other source gives the current that the network draws, or is charged by such a source. */
function isConverter(part: Part): part is Converter {
  return currentLimitsOf(part).some(({ current, heldByItself }) => current === "gives" && heldByItself);
}

function greatestOf(
  network: Network,
  converters: readonly Converter[],
  loads: readonly Part[],
): ConverterDemand | undefined {
  const outputV = Math.max(...converters.map((converter) => converter.outputV));
  let most: ConverterDemand | undefined;
  network.scenarios.forEach((state, scenario) => {
    const running = converters.filter(({ index }) => state.on[index]);
    if (running.length === 0 || state.momentary) return;
    const drawing = loads
      .filter(({ index }) => state.on[index])
      .map(({ index }) => ({ index, currentA: drawnA(network.parts[index]!, outputV) }))
      .sort((one, other) => other.currentA - one.currentA || one.index - other.index);
    const demandA = drawing.reduce((sum, { currentA }) => sum + currentA, 0);
    const givesA = running.reduce((sum, one) => sum + one.outputA, 0);
    if (most && demandA - givesA <= most.demandA - most.givesA) return;
    most = { converters: running, givesA, demandA, devices: drawing.map(({ index }) => index), scenario };
  });
  return most;
}

function drawnA(part: Part, atV: number): number {
  if (part.kind === "inverter") return inverterSupplyA({ ...part, continuousW: part.loadW, lowestV: atV });
  return part.kind === "load" ? loadCurrentA(part.draws, atV) : 0;
}
