import {
  battery,
  build,
  busBar,
  cable,
  circuit,
  disconnect,
  fusePanel,
  inverter,
  shoreCharger,
  shunt,
} from "loomwright";

// A coffee trailer: two lithium batteries of 24 V in parallel for a machine of 3 kW.
build({ name: "coffee trailer", voltage: 24, insulationC: 105, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bankPlus = busBar({ name: "bank plus", side: "positive", ratedA: 400, studs: 4 });
const bankMinus = busBar({ name: "bank minus", side: "negative", ratedA: 400, studs: 4 });
for (const side of ["left", "right"]) {
  const one = battery({
    name: `${side} battery`,
    chemistry: "LiFePO4",
    nominalV: 25.6,
    capacityAh: 200,
    internalMilliohm: 4,
    maxDischargeA: 150,
    maxChargeA: 100,
  });
  cable({
    name: `${side} plus`,
    from: one.positive,
    to: bankPlus.stud,
    lengthFt: 1.5,
    gauge: 1,
    protect: classT(175),
  });
  cable({ name: `${side} minus`, from: one.negative, to: bankMinus.stud, lengthFt: 1.5, gauge: 1 });
}
const off = disconnect({ name: "switch", ratedA: 300 });
const plus = busBar({ name: "plus", side: "positive", ratedA: 300, studs: 5 });
const minus = busBar({ name: "minus", side: "negative", ratedA: 300, studs: 5 });
const meter = shunt({ name: "meter", ratedA: 500 });
cable({
  name: "to switch",
  from: bankPlus.stud,
  to: off.line,
  lengthFt: 1,
  gauge: "2/0",
  protect: classT(225),
});
cable({ name: "switched plus", from: off.load, to: plus.stud, lengthFt: 1, gauge: "2/0" });
cable({ name: "to meter", from: bankMinus.stud, to: meter.batterySide, lengthFt: 1, gauge: "2/0" });
cable({ name: "metered minus", from: meter.systemSide, to: minus.stud, lengthFt: 1, gauge: "2/0" });
const machine = inverter({
  name: "inverter",
  continuousW: 3000,
  surgeW: 4500,
  efficiencyPercent: 92,
  cutOffV: 22,
});
circuit({
  name: "inverter pair",
  from: plus.stud,
  returnTo: minus.stud,
  to: machine,
  oneWayFt: 3,
  gauge: "2/0",
  protect: classT(200),
});
const panel = fusePanel({ name: "panel", positions: 4, ratedA: 40, branchRatedA: 15 });
circuit({
  name: "panel feeder",
  from: plus.stud,
  returnTo: minus.stud,
  to: panel,
  oneWayFt: 4,
  gauge: 8,
  protect: classT(30),
});
circuit({
  name: "counter lamps",
  from: panel.branch,
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT(6) },
});
circuit({
  name: "water pump",
  from: panel.branch,
  load: 4,
  continuous: false,
  oneWayFt: 6,
  gauge: 14,
  protect: { ...classT(6) },
});
const charger = shoreCharger({ name: "charger", outputA: 60, outputV: 28.4 });
cable({
  name: "charger plus",
  from: charger.positive,
  to: plus.stud,
  lengthFt: 4,
  gauge: 4,
  protectFarEnd: classT(80),
});
cable({ name: "charger minus", from: charger.negative, to: minus.stud, lengthFt: 4, gauge: 4 });
