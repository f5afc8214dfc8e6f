import { testRule } from "../rule.tester.ts";
import { compartmentHeat } from "./compartment-heat.ts";

const locker = (air: string, more = "") => `
  const locker = compartment({ ${air} });
  const board = surface({ size: { widthMm: 2_000, heightMm: 800 }, compartment: locker });
  const house = battery({ chemistry: "AGM", capacityAh: 100 });
  const ac = inverter({ continuousW: 2000, efficiencyPercent: 90, at: { on: board, leftMm: 100, topMm: 100 }${more} });
  cable({ from: house.positive, to: ac.positive, lengthM: 1, gauge: 2 });
  cable({ from: house.negative, to: ac.negative, lengthM: 1, gauge: 2 });`;

testRule(compartmentHeat, [
  {
    name: "an inverter behind painted steel",
    plan: locker('walls: [{ material: "painted steel", areaM2: 1 }], outsideC: 35'),
    finds: [
      {
        subject: "locker",
        record: "locker",
        on: "",
        message:
          "ac gives off 222 W at full load: through these walls (5.5 W/K) the air in it becomes 40.4 K warmer than outside, to 75.4 °C (common practice, no source).",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a wall of wood",
    plan: locker('walls: [{ material: "painted steel", areaM2: 1 }, { material: "wood", areaM2: 1 }]'),
    finds: "nothing",
  },
  { name: "walls that are not stated", plan: locker("outsideC: 35"), finds: "nothing" },
  {
    name: "aluminium by the smaller of two figures, and less heat than the plan takes",
    plan: locker('ambientC: 60, walls: [{ material: "aluminium", areaM2: 2 }], outsideC: 35', ", heatW: 130"),
    finds: [
      {
        on: "",
        message:
          "ac gives off 130 W at full load: through these walls (13 W/K) the air in it becomes 10 K warmer than outside, to 45 °C (common practice, no source).",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "hotter than the plan takes, and a charger whose heat is not known",
    plan: `${locker('ambientC: 40, walls: [{ material: "plastic", areaM2: 2 }], outsideC: 35', ", heatW: 70")}
      const mains = shoreCharger({ outputA: 10, at: { on: board, leftMm: 300, topMm: 100 } });
      cable({ from: mains.positive, to: house.positive, lengthM: 1, gauge: 10 });
      cable({ from: mains.negative, to: house.negative, lengthM: 1, gauge: 10 });`,
    finds: [
      {
        on: "",
        message:
          "ac gives off at least 70 W at full load: through these walls (7 W/K) the air in it becomes at least 10 K warmer than outside, to 45 °C (common practice, no source). The plan takes 40 °C in it: state more, or lead air through. Not counted, as its heatW is not stated: mains.",
        fixes: "no fix",
      },
    ],
  },
]);
