import { alternator, battery, build, cable, circuit, dcDcCharger, disconnect } from "loomwright";

// A camper: the booster's input fuse suits its output and not its input when the voltage is low.
// Expected: warning charger/input-current at booster input or booster
// Because: Power balance: 40 A x 14.4 V / 90 % / 10.5 V = 61 A; the fuse is 50 A.
// May follow: error protection/below-load at booster input
// May follow: warning protection/headroom at booster input
build({ name: "booster fuse too small", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const start = battery({
  name: "start battery",
  chemistry: "AGM",
  capacityAh: 80,
  shortCircuitA: 2300,
  maxDischargeA: 500,
});
const engine = alternator({ name: "alternator", ratedA: 120 });
cable({
  name: "alternator plus",
  from: engine.positive,
  to: start.positive,
  lengthFt: 4,
  gauge: 2,
  protectFarEnd: { ...classT, ratingA: 150, distanceIn: 6 },
});
cable({ name: "alternator minus", from: engine.negative, to: start.negative, lengthFt: 4, gauge: 2 });
const booster = dcDcCharger({ name: "booster", outputA: 40, inputMinV: 10.5, isolated: true });
circuit({
  name: "booster input",
  from: start.positive,
  to: booster,
  oneWayFt: 6,
  gauge: 4,
  protect: { ...classT, ratingA: 50, distanceIn: 6 },
});
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
cable({
  name: "booster plus",
  from: booster.outputPositive,
  to: mainSwitch.load,
  lengthFt: 3,
  gauge: 6,
  protectFarEnd: { ...classT, ratingA: 60, distanceIn: 5 },
});
cable({ name: "booster minus", from: booster.outputNegative, to: bank.negative, lengthFt: 3, gauge: 6 });
const fromSwitch = { from: mainSwitch.load, returnTo: bank.negative } as const;
circuit({
  ...fromSwitch,
  name: "lamps",
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
