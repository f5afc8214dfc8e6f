import {
  alternator,
  battery,
  build,
  busBar,
  cable,
  circuit,
  dcDcCharger,
  disconnect,
  fusePanel,
  load,
  shunt,
} from "loomwright";

// A clinic in a van: 12 V lithium, medicine that must stay cold, one reading that its owner has accepted.
build({ name: "mobile clinic", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "clinic bank",
  chemistry: "LiFePO4",
  capacityAh: 200,
  internalMilliohm: 4,
  maxDischargeA: 200,
  maxChargeA: 100,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 200 });
const meter = shunt({ name: "meter", ratedA: 200 });
const plusBus = busBar({ name: "plus bus", side: "positive", ratedA: 150, studs: 5 });
const minusBus = busBar({ name: "minus bus", side: "negative", ratedA: 150, studs: 6 });
cable({
  name: "bank to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 4,
  protect: { ...classT, ratingA: 125, distanceIn: 6 },
});
cable({ name: "switch to bus", from: mainSwitch.load, to: plusBus.stud, lengthFt: 1, gauge: 4 });
cable({ name: "bank to meter", from: bank.negative, to: meter.batterySide, lengthFt: 1, gauge: 4 });
cable({ name: "meter to bus", from: meter.systemSide, to: minusBus.stud, lengthFt: 1, gauge: 4 });

// The van's own battery stays with its engine.
const vanBattery = battery({
  name: "van battery",
  chemistry: "AGM",
  capacityAh: 95,
  shortCircuitA: 2600,
  maxDischargeA: 500,
  maxChargeA: 120,
});
const engine = alternator({ name: "alternator", ratedA: 150 });
cable({
  name: "alternator plus",
  from: engine.positive,
  to: vanBattery.positive,
  lengthFt: 4,
  gauge: 1,
  protectFarEnd: { ...classT, ratingA: 200, distanceIn: 6 },
});
cable({ name: "alternator minus", from: engine.negative, to: vanBattery.negative, lengthFt: 4, gauge: 1 });
const booster = dcDcCharger({ name: "booster", outputA: 40, outputV: 14.2, inputMinV: 12, isolated: true });
circuit({
  name: "booster input",
  from: vanBattery.positive,
  to: booster,
  oneWayFt: 12,
  gauge: 2,
  protect: { ...classT, ratingA: 70, distanceIn: 6 },
});
cable({
  name: "booster plus",
  from: booster.outputPositive,
  to: plusBus.stud,
  lengthFt: 3,
  gauge: 6,
  protectFarEnd: { ...classT, ratingA: 60, distanceIn: 5 },
});
cable({ name: "booster minus", from: booster.outputNegative, to: minusBus.stud, lengthFt: 3, gauge: 6 });

const panel = fusePanel({ name: "clinic panel", positions: 8, ratedA: 100, branchRatedA: 30 });
circuit({
  name: "panel feeder",
  from: plusBus.stud,
  returnTo: minusBus.stud,
  to: panel,
  oneWayFt: 6,
  gauge: 4,
  protect: { ...classT, ratingA: 80, distanceIn: 5 },
});
const cold = load({ name: "medicine cooler", powerW: 60, minimumV: 10.8, critical: true });
circuit({ name: "medicine cooler supply", from: panel.branch, to: cold, oneWayFt: 8, gauge: 8, protect: 10 });
circuit({
  name: "examination lamp",
  from: panel.branch,
  load: 3,
  oneWayFt: 9,
  gauge: 12,
  protect: 5,
  critical: true,
});
circuit({
  name: "centrifuge",
  from: panel.branch,
  load: 8,
  continuous: false,
  oneWayFt: 10,
  gauge: 10,
  protect: 10,
});
circuit({
  name: "rear step lamp",
  from: panel.branch,
  load: 0.5,
  oneWayFt: 70,
  gauge: 16,
  protect: 3,
  dropLimitPercent: 3,
  accept: { "conductor/voltage-drop": "an LED lamp that works from 9 V; it is bright enough" },
});
