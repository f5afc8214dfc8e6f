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
} from "loomwright";

// An expedition truck: 24 V throughout, metric; two start batteries in series, a booster to a lithium bank in the cabin.
build({ name: "expedition truck", voltage: 24, insulationC: 90 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const start = {
  chemistry: "flooded lead-acid",
  nominalV: 12,
  capacityAh: 170,
  internalMilliohm: 3,
  maxDischargeA: 900,
  maxChargeA: 60,
} as const;
const lower = battery({ ...start, name: "lower start battery" });
const upper = battery({ ...start, name: "upper start battery" });
const truckMinus = busBar({ name: "truck minus", side: "negative", ratedA: 300, studs: 4 });
cable({ name: "start link", from: lower.positive, to: upper.negative, lengthM: 0.4, mm2: 70 });
cable({ name: "start minus", from: lower.negative, to: truckMinus.stud, lengthM: 0.5, mm2: 70 });
const engine = alternator({ name: "alternator", ratedA: 80 });
cable({
  name: "alternator plus",
  from: engine.positive,
  to: upper.positive,
  lengthM: 2.5,
  mm2: 35,
  engineSpace: true,
  protectFarEnd: { ...classT, ratingA: 110, distanceMm: 150 },
});
cable({
  name: "alternator minus",
  from: engine.negative,
  to: truckMinus.stud,
  lengthM: 2,
  mm2: 35,
  engineSpace: true,
});

const booster = dcDcCharger({ name: "booster", outputA: 25, outputV: 28.4, inputMinV: 23, isolated: true });
circuit({
  name: "booster input",
  from: upper.positive,
  returnTo: truckMinus.stud,
  to: booster,
  oneWayM: 5,
  mm2: 16,
  protect: { ...classT, ratingA: 45, distanceMm: 150 },
});

const bank = battery({
  name: "cabin bank",
  chemistry: "LiFePO4",
  capacityAh: 150,
  internalMilliohm: 8,
  maxDischargeA: 150,
  maxChargeA: 75,
});
const mainSwitch = disconnect({ name: "cabin switch", ratedA: 100 });
const panel = fusePanel({ name: "cabin panel", positions: 8, ratedA: 80, branchRatedA: 40 });
cable({
  name: "bank to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthM: 0.6,
  mm2: 16,
  protect: { ...classT, ratingA: 60, distanceMm: 150 },
});
cable({ name: "switch to panel", from: mainSwitch.load, to: panel.feed, lengthM: 0.6, mm2: 16 });
cable({ name: "panel minus", from: panel.negative, to: bank.negative, lengthM: 1.2, mm2: 16 });
cable({
  name: "booster plus",
  from: panel.branch,
  to: booster.outputPositive,
  lengthM: 1.5,
  mm2: 10,
  protect: { ...classT, ratingA: 35 },
});
cable({ name: "booster minus", from: booster.outputNegative, to: panel.negative, lengthM: 1.5, mm2: 10 });
circuit({
  name: "cabin lamps",
  from: panel.branch,
  load: 2,
  oneWayM: 5,
  mm2: 1.5,
  protect: { ...classT, ratingA: 3 },
});
circuit({
  name: "water pump",
  from: panel.branch,
  load: 4,
  continuous: false,
  oneWayM: 4,
  mm2: 2.5,
  protect: { ...classT, ratingA: 6 },
});
circuit({
  name: "air heater",
  from: panel.branch,
  load: 5,
  oneWayM: 3,
  mm2: 2.5,
  protect: { ...classT, ratingA: 10 },
});
