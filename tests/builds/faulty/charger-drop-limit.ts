import { battery, build, cable, circuit, dcDcCharger, disconnect } from "loomwright";

// A solar boat: its builder allows the charger's input 1 % of drop, and it loses more.
// Expected: warning conductor/voltage-drop at charger input
// Because: Stated in the plan: 1 % of 12 V; 25 A through 20 ft of 8 AWG lose some 3 %.
build({ name: "charger drop limit", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  capacityAh: 200,
  internalMilliohm: 4,
  maxDischargeA: 200,
  maxChargeA: 100,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 200 });
cable({
  name: "bank to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: "1/0",
  protect: { ...classT, ratingA: 200, distanceIn: 6 },
});
const fromSwitch = { from: mainSwitch.load, returnTo: bank.negative } as const;
circuit({
  ...fromSwitch,
  name: "lamps",
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
const other = battery({
  name: "bow battery",
  chemistry: "AGM",
  capacityAh: 60,
  shortCircuitA: 1800,
  maxDischargeA: 200,
  maxChargeA: 30,
});
const bow = dcDcCharger({ name: "bow charger", outputA: 15, isolated: true, runs: "always" });
circuit({
  ...fromSwitch,
  name: "charger input",
  to: bow,
  dropLimitPercent: 1,
  oneWayFt: 12,
  gauge: 8,
  protect: { ...classT, ratingA: 30, distanceIn: 5 },
});
cable({
  name: "charger plus",
  from: bow.outputPositive,
  to: other.positive,
  lengthFt: 3,
  gauge: 10,
  protectFarEnd: { ...classT, ratingA: 20, distanceIn: 5 },
});
cable({ name: "charger minus", from: bow.outputNegative, to: other.negative, lengthFt: 3, gauge: 10 });
const bowSwitch = disconnect({ name: "bow switch", ratedA: 50 });
cable({
  name: "bow battery to switch",
  from: other.positive,
  to: bowSwitch.line,
  lengthFt: 2,
  gauge: 8,
  protect: { ...classT, ratingA: 30, distanceIn: 6 },
});
circuit({
  name: "bow lamp",
  from: bowSwitch.load,
  returnTo: other.negative,
  load: 2,
  oneWayFt: 6,
  gauge: 14,
  protect: { ...classT, ratingA: 3, distanceIn: 5 },
});
