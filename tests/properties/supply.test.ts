import { expect, test } from "vitest";
import { addedLoads } from "../../library/analysis/network/solver/added-load.ts";
import { solveScenarios } from "../../library/analysis/network/solver/solve-scenarios.ts";
import type { LoadPart, Network, Scenario } from "../../library/model/network.ts";
import { passesCurrentOn } from "../../library/model/part-roles.ts";
import { statedDropLimit } from "../../library/standards/drop-limits.ts";
import { randomNetwork } from "../published/ngspice/random-network.ts";

test("a load that is added flows as it does when the whole network is solved with and without it", () => {
  let compared = 0;
  for (let seed = 1; seed <= 60; seed++) {
    const network = withSharedNegatives(randomNetwork(seed), seed);
    for (const load of loadsOf(network)) {
      const [alone, idle] = solveScenarios(withLoadAlone(network, load));
      if (alone?.state !== "solved" || idle?.state !== "solved") continue;
      const flow = addedLoads(network).flow(load);
      const drawnA = -alone.partA[load.part]!;
      expect(flow?.drawnA ?? 0).toBeCloseTo(drawnA, 8);
      if (drawnA === 0) continue;
      const added = new Map(flow?.conductors.map(({ conductor, addedA }) => [conductor, addedA]));
      network.conductors.forEach((_, conductor) => {
        const addedA = alone.conductorA[conductor]! - idle.conductorA[conductor]!;
        expect(
          Math.abs((added.get(conductor) ?? 0) - addedA),
          `seed ${seed}, conductor ${conductor}`,
        ).toBeLessThan(1e-8 * load.currentA);
        compared++;
      });
    }
  }
  expect(compared).toBeGreaterThan(3_000);
});

function loadsOf({ parts }: Network) {
  return parts.flatMap((part) => {
    const { index } = part;
    if (part.kind === "inverter") return [{ part: index, ...part.terminals, currentA: 80 }];
    // Includes reversed polarity, and currents far beyond its cables.
    if (part.kind === "load") {
      const { positive, negative } = part.terminals;
      return [{ part: index, positive: negative, negative: positive, currentA: 5 }];
    }
    if (part.kind !== "dcDcCharger") return [];
    const { inputPositive: positive, inputNegative: negative } = part.terminals;
    return [
      { part: index, positive, negative, currentA: 30 },
      { part: index, positive, negative, currentA: 30_000 },
    ];
  });
}

/** Every second charger connects its two negatives. */
function withSharedNegatives(network: Network, seed: number): Network {
  const parts = network.parts.map((part) =>
    part.kind === "dcDcCharger" ? { ...part, isolated: (part.index + seed) % 2 === 0 } : part,
  );
  return { ...network, parts };
}

/** Two scenarios: batteries and this load; the batteries alone. */
function withLoadAlone(network: Network, of: ReturnType<typeof loadsOf>[number]): Network {
  const { part: index, positive, negative, currentA } = of;
  const { record, name, accept } = network.parts[index]!;
  const load: LoadPart = {
    kind: "load",
    index,
    record,
    name,
    accept,
    terminals: { positive, negative },
    draws: { as: "current", currentA },
    critical: false,
    continuous: true,
    dropLimitPercent: 100,
    dropLimitStated: true,
    dropLimitSource: statedDropLimit,
    systemV: 12,
    lowestV: 10.5,
    statedBy: "load",
  };
  const parts = network.parts.map((part) => (part.index === index ? load : part));
  const alone: Scenario = {
    name,
    on: parts.map((part) => part.index === index || part.kind === "battery" || passesCurrentOn(part)),
    starting: parts.map(() => false),
    restV: network.scenarios[0]!.restV,
    restFrom: network.scenarios[0]!.restFrom,
    sunShare: 0,
    momentary: false,
  };
  const idle = { ...alone, on: alone.on.map((on, part) => on && part !== index) };
  return { ...network, parts, scenarios: [alone, idle] };
}
