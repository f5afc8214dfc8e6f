import { recordsOfIslands } from "../../analysis/network/topology/islands.ts";
import type { InverterPart, Network } from "../../model/network.ts";
import { cutOffVoltage } from "../../standards/device-practice.ts";
import { inverterCutOff } from "../../standards/machine-practice.ts";
import { defineRule, inNetwork } from "../rule.ts";
import { exceeds, withUnit } from "../wording/format-number.ts";
import { atPart } from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const otherVoltage = defineRule<Values>({
  id: "inverter/other-voltage",
  title: "Inverter made for another voltage",
  severity: "error",
  why: "An inverter for 12 V on a bank of 24 V is destroyed as it is connected; its capacitors may burst.",
  sources: [inverterCutOff.source],
  fixable: false,
  acceptable: true,
  restsOn: "voltages",
  // Needs the voltage that arrives at each inverter. Its own cut-off voltage shows the voltage that it is made for. Silent
  // on one with a stated maximum voltage, which part/other-voltage judges. The current at a cut-off that is not its own is none that a
  // conductor must carry: findings that it alone causes follow from this one.
  check: (plan) =>
    inNetwork(plan, ({ network, result }) => {
      const ways = new Map(result.supplyPaths.map((way) => [way.part, way]));
      const found = network.parts.flatMap((part) => {
        const way = ways.get(part.index);
        if (part.kind !== "inverter" || !way || part.maximumV !== undefined) return [];
        const { arrivingV, dropV, dropPercent } = way;
        if (!exceeds(inverterCutOff.leastShare * arrivingV, part.cutOffV)) return [];
        const values: Values = {
          cutOffV: part.cutOffV,
          arrivingV,
          usualV: (cutOffVoltage.for12V * ((100 * dropV) / dropPercent)) / 12,
          source: sourceInWords(inverterCutOff.source),
        };
        return [{ part, values }];
      });
      const asIfMended = () => withUsualCutOffs(network, found);
      return found.map(({ part, values }) => ({
        subject: part.name,
        at: atPart(part, "cutOffV"),
        values,
        explains: recordsOfIslands(network, [part.index]),
        asIfMended,
      }));
    }),
  message: ({ cutOffV, arrivingV, usualV, source }) =>
    `Switches off at ${withUnit(cutOffV, "V")} (cutOffV), and ${withUnit(arrivingV, "V")} arrive: it is made for a lower voltage, or this is not its cut-off; about ${withUnit(usualV, "V")} is usual here (${source}). Use an inverter for this bank, or state its own cut-off.`,
});

/** The network with these inverters made for its voltage. */
function withUsualCutOffs(
  network: Network,
  found: readonly { readonly part: InverterPart; readonly values: Values }[],
): Network {
  const usualV = new Map(found.map(({ part, values }) => [part.index, values.usualV]));
  return {
    ...network,
    parts: network.parts.map((part) => {
      const cutOffV = usualV.get(part.index);
      return cutOffV === undefined || part.kind !== "inverter"
        ? part
        : { ...part, cutOffV, lowestV: cutOffV };
    }),
  };
}

interface Values {
  readonly cutOffV: number;
  readonly arrivingV: number;
  /** The usual cut-off voltage in a system of this voltage. */
  readonly usualV: number;
  readonly source: string;
}
