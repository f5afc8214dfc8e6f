import type { SupplyPath } from "../../analysis/network-result.ts";
import type { ChassisPart, Network } from "../../model/network.ts";
import { isConsumer, isStarterMotor } from "../../model/part-roles.ts";
import { hullReturn } from "../../standards/hull-return.ts";
import { defineRule, type Found, inNetwork } from "../rule.ts";
import { atPart, listInWords, partInWords, relatedPart } from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const networkHullReturn = defineRule<Values>({
  id: "network/hull-return",
  title: "Hull that carries the return of loads",
  severity: "error",
  why: "Current in a hull flows through the water too: it corrodes the hull, its fittings and the boats beside it within weeks.",
  sources: [hullReturn],
  fixable: false,
  acceptable: true,
  // Needs the supply path of each device, and the kind of place. Engines are cranked, and charge, through their own
  // metal.
  check: (plan) =>
    plan.model.build.installedIn?.startsWith("boat")
      ? inNetwork(plan, ({ network, result }) =>
          network.parts.flatMap((part) =>
            part.kind === "chassis" ? returnsThrough(network, result.supplyPaths, part) : [],
          ),
        )
      : [],
  message: ({ devices, source }) =>
    `${listInWords(devices)} ${devices.length > 1 ? "return" : "returns"} through this metal, and a boat's hull is no conductor (${source}): lead ${devices.length > 1 ? "their returns" : "the return"} to the negative bus in a conductor, and keep the hull as a bond alone.`,
});

interface Values {
  readonly devices: readonly string[];
  readonly source: string;
}

function returnsThrough(network: Network, ways: readonly SupplyPath[], metal: ChassisPart): Found<Values>[] {
  const endsAt = ({ legs }: SupplyPath, terminal: number) =>
    legs.some(({ conductor: index }) => {
      const { from, to } = network.conductors[index]!;
      return from === terminal || to === terminal;
    });
  const { bond, metal: body } = metal.terminals;
  const devices = ways.flatMap((way) => {
    const part = network.parts[way.part]!;
    return isConsumer(part) && !isStarterMotor(part) && endsAt(way, bond) && endsAt(way, body) ? [part] : [];
  });
  if (devices.length === 0) return [];
  const source = sourceInWords(hullReturn);
  return [
    {
      subject: metal.name,
      at: atPart(metal),
      values: { devices: devices.map(partInWords), source },
      related: devices.slice(0, mostRelated).map((device) => relatedPart(device)),
    },
  ];
}

const mostRelated = 8;
