import { batteriesBeside } from "../../analysis/network/topology/batteries-beside.ts";
import { endsAt } from "../../analysis/network/topology/ends-at.ts";
import { recordsOfIslands } from "../../analysis/network/topology/islands.ts";
import type {
  BatteryPart,
  DcDcChargerPart,
  Network,
  NetworkConductor,
  SolarControllerPart,
} from "../../model/network.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule, type Found, inNetwork } from "../rule.ts";
import { atConductor, listInWords, partInWords, relatedPart } from "../wording/part-in-words.ts";

export const wrongPort = defineRule<Values>({
  id: "network/wrong-port",
  title: "Battery at the wrong side of a charger",
  severity: "error",
  why: "A charger whose two sides are mixed up does not charge, and joins batteries or modules that it should keep apart.",
  sources: [ownRequirement("Modules are connected with one side of a controller, batteries with the other.")],
  fixable: false,
  acceptable: true,
  ignoresLoads: "entirely",
  // Needs the batteries on the modules' side of each controller, and chargers with two feeds and a free output.
  check: (plan) =>
    inNetwork(plan, ({ network }) =>
      network.parts.flatMap((part): Found<Values>[] => {
        if (part.kind === "solarController") return onModulesSide(network, part);
        return part.kind === "dcDcCharger" ? twiceAtInput(network, part) : [];
      }),
    ),
  message: ({ charger, batteries }) =>
    batteries
      ? `Connects ${listInWords(batteries)} with the modules' side of ${charger} (solarPositive, solarNegative). The side for batteries is positive and negative: begin the circuit there (from: positive, returnTo: negative), or use a cable for each.`
      : `Ends at the input of ${charger} (inputPositive, inputNegative) beside another feed, and the output is free: current passes the charger by. Begin the circuit at the output (from: outputPositive, returnTo: outputNegative), or use a cable for each.`,
});

interface Values {
  readonly charger: string;
  /** Those on the modules' side of a solar controller. */
  readonly batteries?: readonly string[];
}

function onModulesSide(network: Network, part: SolarControllerPart): Found<Values>[] {
  const { solarPositive } = part.terminals;
  const batteries = batteriesBeside(network, { positive: solarPositive });
  if (batteries.length === 0) return [];
  const fromElsewhere = ({ from, to }: NetworkConductor) => {
    const { part: other } = network.terminals[from === solarPositive ? to : from]!;
    return network.parts[other]?.kind !== "solarArray";
  };
  const conductor = endsAt(network, solarPositive).findLast(fromElsewhere);
  if (!conductor) return [];
  const { solarNegative, positive, negative } = part.terminals;
  const rightSide = new Map([
    [solarPositive, positive],
    [solarNegative, negative],
  ]);
  return [findingAt(conductor, solarPositive, { charger: part, batteries, network, rightSide })];
}

function twiceAtInput(network: Network, part: DcDcChargerPart): Found<Values>[] {
  const { inputPositive, outputPositive } = part.terminals;
  const feeds = endsAt(network, inputPositive);
  const second = feeds.at(-1);
  if (!second || feeds.length < 2 || endsAt(network, outputPositive).length > 0) return [];
  const { inputNegative, outputNegative } = part.terminals;
  const rightSide = new Map([
    [inputPositive, outputPositive],
    [inputNegative, outputNegative],
  ]);
  return [findingAt(second, inputPositive, { charger: part, network, rightSide })];
}

function findingAt(
  conductor: NetworkConductor,
  terminal: number,
  on: {
    readonly charger: SolarControllerPart | DcDcChargerPart;
    readonly batteries?: readonly BatteryPart[];
    readonly network: Network;
    /** By terminal of the wrong side: that of the right one. */
    readonly rightSide: ReadonlyMap<number, number>;
  },
): Found<Values> {
  const { charger, batteries, network, rightSide } = on;
  return {
    explains: recordsOfIslands(network, [charger.index]),
    asIfMended: () => connectedElsewhere(network, conductor.record, rightSide),
    isOfConnections: true,
    subject: conductor.name,
    at: atConductor(conductor, conductor.to === terminal ? "to" : "from"),
    values: {
      charger: partInWords(charger),
      ...(batteries && { batteries: batteries.map((battery) => partInWords(battery)) }),
    },
    related: [relatedPart(charger)],
  };
}

/** The network with the ends of a run at other terminals. */
function connectedElsewhere(network: Network, record: number, instead: ReadonlyMap<number, number>): Network {
  const at = (terminal: number) => instead.get(terminal) ?? terminal;
  const conductors = network.conductors.map((one) =>
    one.record === record ? { ...one, from: at(one.from), to: at(one.to) } : one,
  );
  return { ...network, conductors };
}
