import {
  alternator,
  battery,
  build,
  cable,
  circuit,
  dcDcCharger,
  disconnect,
  fusePanel,
  motor,
} from "loomwright";

// A truck of 24 V with a booster into its living bank, winch included.
build({ name: "expedition truck", voltage: 24, insulationC: 105 });

const start = battery({
  name: "start bank",
  chemistry: "flooded lead-acid",
  nominalV: 24,
  capacityAh: 170,
  internalMilliohm: 8,
});
const engine = alternator({ name: "alternator", ratedA: 80 });
cable({
  name: "alternator plus",
  from: engine.positive,
  to: start.positive,
  lengthFt: 8,
  gauge: 6,
  protectFarEnd: { ratingA: 125, distanceIn: 6 },
});
cable({ name: "alternator minus", from: engine.negative, to: start.negative, lengthFt: 8, gauge: 8 });
const winch = motor({ name: "winch", runningA: 180, startingA: 300, continuous: false });
circuit({
  name: "winch leads",
  from: start.positive,
  returnTo: start.negative,
  to: winch,
  oneWayFt: 18,
  gauge: 2,
  protect: { ratingA: 150, distanceIn: 10 },
});
const booster = dcDcCharger({ name: "booster", outputA: 40, isolated: true });
circuit({
  name: "booster input",
  from: start.positive,
  to: booster,
  returnTo: start.negative,
  oneWayFt: 20,
  gauge: 8,
  protect: { ratingA: 60, distanceIn: 10 },
});
const living = battery({
  name: "living bank",
  chemistry: "LiFePO4",
  nominalV: 25.6,
  capacityAh: 100,
  internalMilliohm: 10,
  maxDischargeA: 100,
  maxChargeA: 50,
});
const off = disconnect({ name: "living switch", ratedA: 150 });
const panel = fusePanel({ name: "panel", positions: 8 });
cable({
  name: "booster plus",
  from: booster.outputPositive,
  to: off.load,
  lengthFt: 4,
  gauge: 10,
  protectFarEnd: 50,
});
cable({ name: "booster minus", from: booster.outputNegative, to: living.negative, lengthFt: 4, gauge: 10 });
cable({
  name: "bank to switch",
  from: living.positive,
  to: off.line,
  lengthFt: 2,
  gauge: 6,
  protect: { ratingA: 125, family: "UL 248-15 Class T", interruptingA: 20_000, distanceIn: 6 },
});
cable({ name: "switch to panel", from: off.load, to: panel.feed, lengthFt: 6, gauge: 10 });
cable({ name: "panel return", from: panel.negative, to: living.negative, lengthFt: 6, gauge: 12 });
circuit({ name: "heater", from: panel.branch, load: 5, oneWayFt: 10, gauge: 16, protect: 15 });
circuit({ name: "fridge", from: panel.branch, load: 4, oneWayFt: 15, gauge: 16, protect: 10 });
circuit({ name: "water pump", from: panel.branch, load: 6, oneWayFt: 25, gauge: 16, protect: 10 });
