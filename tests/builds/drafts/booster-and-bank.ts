import { alternator, battery, build, cable, circuit, dcDcCharger, disconnect } from "loomwright";

// A camper with a booster: its input on thin wire, the same fuse at both ends.
build({ name: "camper", voltage: 12, insulationC: 105 });

const start = battery({ name: "start battery", chemistry: "AGM", capacityAh: 80, shortCircuitA: 2200 });
const engine = alternator({ name: "alternator", ratedA: 100 });
cable({ name: "alternator plus", from: engine.positive, to: start.positive, lengthFt: 5, gauge: 6 });
cable({ name: "alternator minus", from: engine.negative, to: start.negative, lengthFt: 5, gauge: 6 });
const booster = dcDcCharger({ name: "booster", outputA: 30, isolated: true });
circuit({ name: "booster input", from: start.positive, to: booster, oneWayFt: 18, gauge: 12, protect: 30 });
const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  capacityAh: 100,
  internalMilliohm: 8,
  maxDischargeA: 100,
  maxChargeA: 50,
});
const mainSwitch = disconnect({ name: "switch", ratedA: 100 });
cable({
  name: "bank to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 8,
  protect: 30,
});
cable({
  name: "booster plus",
  from: booster.outputPositive,
  to: mainSwitch.load,
  lengthFt: 5,
  gauge: 12,
  protect: 30,
});
cable({ name: "booster minus", from: booster.outputNegative, to: bank.negative, lengthFt: 5, gauge: 12 });
circuit({
  name: "fridge",
  from: mainSwitch.load,
  returnTo: bank.negative,
  load: 5,
  oneWayFt: 12,
  gauge: 16,
  protect: 30,
});
