import type { BatteryPart, Draw, Network } from "../../../model/network.ts";
import { sampleNetwork } from "../sample-network.tester.ts";

/**
 * A network of batteries, loads and plain resistances between numbered nodes, without any conductor. For tests only:
 * textbooks know no cables.
 */
export function resistorNetwork(of: {
  batteries: readonly { positive: number; negative: number; emfV: number; ohm: number }[];
  resistances: readonly { between: readonly [number, number]; ohm: number }[];
  loads?: readonly { positive: number; negative: number; draws: Draw }[];
}): Network {
  const build = sampleNetwork();
  const batteries = of.batteries.map(({ emfV, ohm }) => build.battery(batteryOf(emfV, ohm)));
  const loads = (of.loads ?? []).map(() => build.load());
  build.other([]);
  const network = build.network();
  const numbers = [
    ...of.batteries.flatMap(({ positive, negative }) => [positive, negative]),
    ...of.resistances.flatMap(({ between }) => between),
    ...(of.loads ?? []).flatMap(({ positive, negative }) => [positive, negative]),
  ];
  const nodes = numbers.reduce((most, number) => Math.max(most, number), 0) + 1;
  const first = network.terminals.length;
  const joiner = network.parts.length - 1;
  const joins = of.resistances.map(({ between: [a, b], ohm }) => ({
    between: [first + a, first + b] as const,
    ohm,
  }));
  const tie = (terminal: number, node: number) => ({ between: [terminal, first + node] as const, ohm: 0 });
  const ties = [
    ...batteries.flatMap((battery, index) => [
      tie(battery.positive, of.batteries[index]!.positive),
      tie(battery.negative, of.batteries[index]!.negative),
    ]),
    ...loads.flatMap((load, index) => [
      tie(load.positive, of.loads![index]!.positive),
      tie(load.negative, of.loads![index]!.negative),
    ]),
  ];
  return {
    ...network,
    terminals: [
      ...network.terminals,
      ...Array.from({ length: nodes }, (_, node) => ({
        part: joiner,
        name: `${node}`,
        side: "either" as const,
      })),
    ],
    parts: network.parts.map((part) => {
      if (part.kind === "part") {
        const own = Array.from({ length: nodes }, (_, node) => [`${node}`, first + node] as const);
        return { ...part, terminals: Object.fromEntries(own), joins: [...joins, ...ties] };
      }
      const load = loads.findIndex((one) => one.part === part.index);
      return part.kind === "load" ? { ...part, draws: of.loads![load]!.draws } : part;
    }),
  };
}

/** Index of the terminal of a numbered node. */
export function nodeTerminal(network: Network, node: number): number {
  const joiner = network.parts.at(-1)!;
  return (joiner.terminals as Readonly<Record<string, number>>)[`${node}`]!;
}

function batteryOf(emfV: number, ohm: number): Partial<BatteryPart> {
  return {
    nominalV: emfV,
    internal: {
      stated: true,
      lowOhm: ohm,
      highOhm: ohm,
      source: { document: "a test", section: "", authority: "common practice", confirmed: "memory" },
    },
  };
}
