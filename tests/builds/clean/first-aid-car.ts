import {
  alternator,
  battery,
  build,
  busBar,
  cable,
  chassis,
  circuit,
  disconnect,
  fusePanel,
  inverter,
  relay,
} from "loomwright";

// A first aid car: starter battery and an AGM battery in the back, joined by a relay; returns through the body.
build({ name: "first aid car", voltage: 12, insulationC: 105, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const body = chassis({ name: "body", milliohm: 0.3 });
const starter = battery({
  name: "starter battery",
  chemistry: "AGM",
  capacityAh: 80,
  internalMilliohm: 4,
  maxDischargeA: 700,
  maxChargeA: 80,
});
const back = battery({
  name: "back battery",
  chemistry: "AGM",
  capacityAh: 80,
  internalMilliohm: 4,
  maxDischargeA: 700,
  maxChargeA: 80,
});
cable({ name: "starter minus", from: starter.negative, to: body.bond, lengthFt: 1, gauge: "1/0" });
const backMinus = busBar({ name: "back minus", side: "negative", ratedA: 200, studs: 5 });
cable({ name: "back bond", from: backMinus.stud, to: body.metal, lengthFt: 1, gauge: 2 });
cable({ name: "back battery minus", from: back.negative, to: backMinus.stud, lengthFt: 1, gauge: 2 });
const machine = alternator({ name: "alternator", ratedA: 150 });
cable({
  name: "alternator plus",
  from: machine.positive,
  to: starter.positive,
  lengthFt: 3,
  gauge: "2/0",
  engineSpace: true,
  protectFarEnd: classT(200),
});
cable({
  name: "alternator minus",
  from: machine.negative,
  to: body.bond,
  lengthFt: 2,
  gauge: "2/0",
  engineSpace: true,
});
const joined = relay({ name: "charging relay", ratedA: 140 });
cable({
  name: "front lead",
  from: starter.positive,
  to: joined.line,
  lengthFt: 3,
  gauge: 2,
  protect: classT(125),
});
cable({
  name: "back lead",
  from: joined.load,
  to: back.positive,
  lengthFt: 14,
  gauge: 2,
  protectFarEnd: classT(125),
});
const off = disconnect({ name: "back switch", ratedA: 150 });
cable({ name: "back plus", from: back.positive, to: off.line, lengthFt: 1, gauge: 2, protect: classT(125) });
const panel = fusePanel({ name: "panel", positions: 6, ratedA: 100, branchRatedA: 30 });
cable({ name: "panel plus", from: off.load, to: panel.feed, lengthFt: 2, gauge: 4 });
cable({ name: "panel minus", from: panel.negative, to: backMinus.stud, lengthFt: 2, gauge: 4 });
circuit({
  name: "suction unit",
  from: panel.branch,
  load: 8,
  critical: true,
  oneWayFt: 5,
  gauge: 10,
  protect: 10,
});
circuit({
  name: "treatment lamps",
  from: panel.branch,
  load: 5,
  critical: true,
  oneWayFt: 8,
  gauge: 10,
  protect: 7.5,
});
circuit({
  name: "oxygen alarm",
  from: panel.branch,
  load: 0.5,
  critical: true,
  oneWayFt: 6,
  gauge: 16,
  protect: 3,
});
const small = inverter({ name: "inverter", continuousW: 500, cutOffV: 10.5 });
circuit({
  name: "inverter pair",
  from: off.load,
  returnTo: backMinus.stud,
  to: small,
  oneWayFt: 3,
  gauge: 4,
  protect: classT(80),
});
