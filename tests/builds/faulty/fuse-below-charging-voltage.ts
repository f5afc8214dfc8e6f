import { battery, build, cable, circuit, disconnect, inverter, shoreCharger } from "loomwright";

// A 48 V lithium hut: the main fuse is marked 58 V, and the charger holds 58.4 V.
// Expected: error protection/voltage-rating at pack to switch
// Because: 33 CFR 183.455(d) and IEC 60364-4-43, 434.5.1: 58 V is less than the 58.4 V that are applied while charging.
build({ name: "pasture hut", voltage: 48, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const pack = battery({
  name: "pack",
  chemistry: "LiFePO4",
  nominalV: 48,
  capacityAh: 100,
  shortCircuitA: 1800,
  maxDischargeA: 100,
  maxChargeA: 50,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 100 });
cable({
  name: "pack to switch",
  from: pack.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 4,
  protect: { ratingA: 80, family: "ISO 8820-5 Type SF 30", ratedV: 58, interruptingA: 2500, distanceIn: 6 },
});
const feed = { from: mainSwitch.load, returnTo: pack.negative } as const;
const tools = inverter({ name: "inverter", continuousW: 2000, efficiencyPercent: 92, cutOffV: 44 });
circuit({
  ...feed,
  name: "inverter supply",
  to: tools,
  oneWayFt: 3,
  gauge: 4,
  protect: { ...classT, ratingA: 70, distanceIn: 5 },
});
const mains = shoreCharger({ name: "charger", outputA: 20, outputV: 58.4 });
cable({
  name: "charger plus",
  from: mains.positive,
  to: mainSwitch.load,
  lengthFt: 4,
  gauge: 10,
  protectFarEnd: { ...classT, ratingA: 30, distanceIn: 5 },
});
cable({ name: "charger minus", from: mains.negative, to: pack.negative, lengthFt: 4, gauge: 10 });
