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
  shunt,
  starterMotor,
} from "loomwright";

// A canal boat: an engine battery and three AGM batteries, joined by a charging relay; a small inverter; the hull bonded once.
build({ name: "canal boat", voltage: 12, insulationC: 105, installedIn: "boat" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const plus = busBar({ name: "house plus", side: "positive", ratedA: 400, studs: 8 });
const bankMinus = busBar({ name: "bank minus", side: "negative", ratedA: 400, studs: 5 });
const minus = busBar({ name: "minus", side: "negative", ratedA: 400, studs: 8 });
for (const place of ["port", "middle", "starboard"]) {
  const one = battery({
    name: `${place} battery`,
    chemistry: "AGM",
    capacityAh: 115,
    internalMilliohm: 4.5,
    maxDischargeA: 250,
    maxChargeA: 35,
  });
  cable({
    name: `${place} plus`,
    from: one.positive,
    to: plus.stud,
    lengthFt: 2,
    gauge: 2,
    protect: classT(150),
  });
  cable({ name: `${place} minus`, from: one.negative, to: bankMinus.stud, lengthFt: 2, gauge: 2 });
}
const meter = shunt({ name: "meter", ratedA: 500 });
cable({ name: "to meter", from: bankMinus.stud, to: meter.batterySide, lengthFt: 1, gauge: "4/0" });
cable({ name: "from meter", from: meter.systemSide, to: minus.stud, lengthFt: 1, gauge: "4/0" });

const engine = battery({
  name: "engine battery",
  chemistry: "flooded lead-acid",
  capacityAh: 100,
  shortCircuitA: 2200,
  maxDischargeA: 700,
  maxChargeA: 60,
});
const engineOff = disconnect({ name: "engine switch", ratedA: 250, momentaryA: 600 });
cable({ name: "engine plus", from: engine.positive, to: engineOff.line, lengthFt: 2, gauge: "1/0" });
cable({ name: "engine minus", from: engine.negative, to: minus.stud, lengthFt: 3, gauge: "1/0" });
const starter = starterMotor({ name: "starter", crankingA: 300 });
cable({
  name: "starter plus",
  from: engineOff.load,
  to: starter.positive,
  lengthFt: 4,
  gauge: "1/0",
  engineSpace: true,
});
cable({
  name: "starter minus",
  from: starter.negative,
  to: minus.stud,
  lengthFt: 4,
  gauge: "1/0",
  engineSpace: true,
});
const machine = alternator({ name: "alternator", ratedA: 90 });
cable({
  name: "alternator plus",
  from: machine.positive,
  to: engine.positive,
  lengthFt: 5,
  gauge: 2,
  engineSpace: true,
  protectFarEnd: classT(125),
});
cable({
  name: "alternator minus",
  from: machine.negative,
  to: minus.stud,
  lengthFt: 4,
  gauge: 2,
  engineSpace: true,
});
const combiner = relay({ name: "charging relay", ratedA: 140 });
cable({
  name: "engine to relay",
  from: engine.positive,
  to: combiner.line,
  lengthFt: 3,
  gauge: 2,
  protect: classT(125),
});
cable({
  name: "relay to house",
  from: combiner.load,
  to: plus.stud,
  lengthFt: 4,
  gauge: 2,
  protectFarEnd: classT(125),
});

const houseOff = disconnect({ name: "house switch", ratedA: 300 });
const served = busBar({ name: "served plus", side: "positive", ratedA: 300, studs: 5 });
cable({
  name: "to house switch",
  from: plus.stud,
  to: houseOff.line,
  lengthFt: 1,
  gauge: "2/0",
  protect: classT(250),
});
cable({ name: "to served plus", from: houseOff.load, to: served.stud, lengthFt: 1, gauge: "2/0" });
const laptop = inverter({ name: "inverter", continuousW: 1000, surgeW: 1500, cutOffV: 10.5 });
circuit({
  name: "inverter pair",
  from: served.stud,
  returnTo: minus.stud,
  to: laptop,
  oneWayFt: 4,
  gauge: 2,
  protect: classT(150),
});
const panel = fusePanel({ name: "cabin panel", positions: 8, ratedA: 80, branchRatedA: 30 });
circuit({
  name: "panel feeder",
  from: served.stud,
  returnTo: minus.stud,
  to: panel,
  oneWayFt: 6,
  gauge: 4,
  protect: classT(60),
});
circuit({ name: "cabin lamps", from: panel.branch, load: 4, oneWayFt: 25, gauge: 12, protect: 5 });
circuit({ name: "fridge", from: panel.branch, load: 5, oneWayFt: 12, gauge: 10, protect: 10 });
circuit({
  name: "water pump",
  from: panel.branch,
  load: 7,
  continuous: false,
  oneWayFt: 15,
  gauge: 10,
  protect: 10,
});
circuit({
  name: "bilge pump",
  from: plus.stud,
  returnTo: minus.stud,
  load: 4,
  critical: true,
  oneWayFt: 10,
  gauge: 12,
  protect: classT(6),
});
const hull = chassis({ name: "hull", milliohm: 0.2 });
cable({ name: "hull bond", from: minus.stud, to: hull.bond, lengthFt: 3, gauge: 2 });
