import { describe, expect, test } from "vitest";
import type { DcDcChargerPart, InverterPart, Network } from "../model/network.ts";
import { analyseNetwork } from "./analyse-network.ts";
import { sampleNetwork } from "./network/sample-network.tester.ts";
import {
  chargerInputA,
  inverterSupplyA,
  inverterSurgeA,
  opensWithinSurge,
  supplyLoads,
} from "./supply-current.ts";

const inverterOf = ({ parts }: Network) =>
  parts.find((part): part is InverterPart => part.kind === "inverter")!;
const chargerOf = ({ parts }: Network) =>
  parts.find((part): part is DcDcChargerPart => part.kind === "dcDcCharger")!;

describe("what a device takes at its least voltage", () => {
  const build = sampleNetwork();
  build.inverter({ continuousW: 900, idleW: 10, cutOffV: 10 });
  build.dcDcCharger({ outputA: 30, outputV: 14.4, inputMinV: 12 });
  const network = build.network();

  test("an inverter: 900 W at 90 % and 10 W idle, from 10 V", () => {
    expect(inverterSupplyA(inverterOf(network))).toBeCloseTo(101, 12);
  });

  test("its surge, where it is stated", () => {
    expect(inverterSurgeA(inverterOf(network))).toBeUndefined();
    expect(inverterSurgeA({ ...inverterOf(network), surgeW: 1800 })).toBeCloseTo(201, 12);
  });

  test("a charger: 30 A at 14.4 V and 90 %, from 12 V; not more than its maker states", () => {
    expect(chargerInputA(chargerOf(network))).toBeCloseTo(40, 12);
    expect(chargerInputA({ ...chargerOf(network), inputMaxA: 38 })).toBe(38);
    expect(chargerInputA({ ...chargerOf(network), inputMaxA: 45 })).toBeCloseTo(40, 12);
  });
});

describe("what conductors on the supply way carry then", () => {
  test("batteries share by their resistances, other loads are added, other conductors are left out", () => {
    const build = sampleNetwork();
    const near = build.battery();
    const far = build.battery({ internal: { ...internal(), lowOhm: 0.012, highOhm: 0.012 } });
    const [plus, minus] = [build.busBar(), build.busBar()];
    const thick = { conductor: { parallel: 20, system: "awg", awg: "4/0" }, lengthM: 0.01 } as const;
    const [nearLead, farLead] = [near, far].map((battery) => {
      build.cable(battery.negative, minus, thick);
      return build.cable(battery.positive, plus, thick);
    });
    const inverter = build.inverter({ loadW: 90, efficiencyPercent: 90 });
    const supply = build.cable(plus, inverter.positive, thick);
    build.cable(inverter.negative, minus, thick);
    const lamp = build.load(10);
    const lampLead = build.cable(plus, lamp.positive, thick);
    build.cable(lamp.negative, minus, thick);
    const network = build.network();
    const loads = supplyLoads({ network, result: analyseNetwork(network) }, inverterOf(network), 100);
    const at = (conductor: number | undefined) => loads.find((load) => load.conductor === conductor);
    // 4 mΩ beside 12 mΩ: three quarters and one quarter, and the same of the lamp's 10 A. The leads have some µΩ.
    expect(at(nearLead)?.share).toBeCloseTo(0.75, 3);
    expect(at(farLead)?.share).toBeCloseTo(0.25, 3);
    expect(at(nearLead)?.currentA).toBeCloseTo(82.5, 1);
    expect(at(nearLead)?.scenario).toBe(0);
    expect(at(supply)).toMatchObject({ scenario: undefined });
    expect(at(supply)?.currentA).toBeCloseTo(100, 9);
    expect(at(lampLead)).toBeUndefined();
  });

  test("a supply that is far too thin carries what the device would take, not what gets through", () => {
    const build = sampleNetwork();
    const bank = build.battery();
    const inverter = build.inverter();
    const thin = { conductor: { parallel: 1, system: "awg", awg: 18 }, lengthM: 30 } as const;
    const supply = build.cable(bank.positive, inverter.positive, thin);
    build.cable(inverter.negative, bank.negative, thin);
    const network = build.network();
    const loads = supplyLoads({ network, result: analyseNetwork(network) }, inverterOf(network), 200);
    expect(loads.find(({ conductor }) => conductor === supply)?.currentA).toBeCloseTo(200, 6);
  });

  test("what flows between two unlike batteries elsewhere is not the device's", () => {
    const build = sampleNetwork();
    const bank = build.battery();
    const inverter = build.inverter();
    const supply = build.cable(bank.positive, inverter.positive);
    const back = build.cable(inverter.negative, bank.negative);
    const [full, flat] = [build.battery({ nominalV: 13 }), build.battery({ nominalV: 12 })];
    build.cable(full.positive, flat.positive);
    build.cable(full.negative, flat.negative);
    const network = build.network();
    const result = analyseNetwork(network);
    const [first] = result.scenarios;
    expect(first?.state === "solved" && Math.abs(first.conductorA[2] ?? 0)).toBeGreaterThan(10);
    const loads = supplyLoads({ network, result }, inverterOf(network), 100);
    expect(loads.map(({ conductor }) => conductor)).toEqual([supply, back]);
  });

  test("a charger's input, and nothing of its output", () => {
    const build = sampleNetwork();
    const [starter, house] = [build.battery(), build.battery()];
    const charger = build.dcDcCharger();
    const input = build.cable(starter.positive, charger.inputPositive);
    const back = build.cable(charger.inputNegative, starter.negative);
    build.cable(charger.outputPositive, house.positive);
    build.cable(charger.outputNegative, house.negative);
    const network = build.network();
    const loads = supplyLoads({ network, result: analyseNetwork(network) }, chargerOf(network), 48);
    expect(loads.map(({ conductor }) => conductor)).toEqual([input, back]);
    for (const { currentA } of loads) expect(currentA).toBeCloseTo(48, 6);
  });

  test("a device that no battery feeds has no supply way", () => {
    const build = sampleNetwork();
    build.battery();
    build.inverter();
    const network = build.network();
    expect(supplyLoads({ network, result: analyseNetwork(network) }, inverterOf(network), 100)).toEqual([]);
  });
});

describe("whether a fuse may open within a surge of 5 s", () => {
  const blade = { ratingA: 100, family: "ISO 8820-3 Type E" } as const;
  test("from the multiple on at which its gates say less than that", () => {
    expect(opensWithinSurge(blade, 199.9)).toBeUndefined();
    expect(opensWithinSurge(blade, 200)?.afterS).toBe(2);
    expect(opensWithinSurge(blade, 700)?.afterS).toBe(0.04);
  });
  test("nothing is said without a family, or without gates that tell", () => {
    expect(opensWithinSurge({ ratingA: 100 }, 1000)).toBeUndefined();
    expect(opensWithinSurge({ ratingA: 100, family: "UL 248-15 Class T" }, 1000)).toBeUndefined();
  });
});

function internal() {
  const build = sampleNetwork();
  build.battery();
  const [part] = build.network().parts;
  if (part?.kind !== "battery") throw new Error("a battery was made");
  return part.internal;
}
