import {
  battery,
  build,
  busBar,
  cable,
  circuit,
  disconnect,
  inverter,
  shoreCharger,
  shunt,
} from "loomwright";

// A fishing cabin: four golf cart batteries of 6 V, two strings of two.
build({ name: "fishing cabin", voltage: 12, insulationC: 105, installedIn: "building" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const plus = busBar({ name: "bank plus", side: "positive", ratedA: 300, studs: 4 });
const bankMinus = busBar({ name: "bank minus", side: "negative", ratedA: 300, studs: 4 });
const minus = busBar({ name: "minus", side: "negative", ratedA: 300, studs: 6 });
for (const side of ["left", "right"]) {
  const of6 = {
    chemistry: "flooded lead-acid",
    nominalV: 6,
    capacityAh: 225,
    internalMilliohm: 2,
    maxDischargeA: 300,
    maxChargeA: 40,
  } as const;
  const lower = battery({ ...of6, name: `${side} lower` });
  const upper = battery({ ...of6, name: `${side} upper` });
  cable({ name: `${side} link`, from: lower.positive, to: upper.negative, lengthFt: 0.8, gauge: "1/0" });
  cable({
    name: `${side} plus`,
    from: upper.positive,
    to: plus.stud,
    lengthFt: 2,
    gauge: "1/0",
    protect: classT(200),
  });
  cable({ name: `${side} minus`, from: lower.negative, to: bankMinus.stud, lengthFt: 2, gauge: "1/0" });
}
const off = disconnect({ name: "switch", ratedA: 250 });
const served = busBar({ name: "plus", side: "positive", ratedA: 250, studs: 6 });
const meter = shunt({ name: "meter", ratedA: 300 });
cable({ name: "to switch", from: plus.stud, to: off.line, lengthFt: 1, gauge: "1/0", protect: classT(200) });
cable({ name: "switched plus", from: off.load, to: served.stud, lengthFt: 1, gauge: "1/0" });
cable({ name: "to meter", from: bankMinus.stud, to: meter.batterySide, lengthFt: 1, gauge: "1/0" });
cable({ name: "metered minus", from: meter.systemSide, to: minus.stud, lengthFt: 1, gauge: "1/0" });
const rails = { from: served.stud, returnTo: minus.stud } as const;
const small = inverter({ name: "inverter", continuousW: 1000, surgeW: 1600, cutOffV: 10.5 });
circuit({ ...rails, name: "inverter pair", to: small, oneWayFt: 3, gauge: 1, protect: classT(150) });
circuit({ ...rails, name: "lamps", load: 4, oneWayFt: 20, gauge: 12, protect: classT(6) });
circuit({ ...rails, name: "pump", load: 8, continuous: false, oneWayFt: 15, gauge: 10, protect: classT(15) });
const charger = shoreCharger({ name: "generator charger", outputA: 50, outputV: 14.7 });
cable({
  name: "charger plus",
  from: charger.positive,
  to: served.stud,
  lengthFt: 5,
  gauge: 6,
  protectFarEnd: classT(70),
});
cable({ name: "charger minus", from: charger.negative, to: minus.stud, lengthFt: 5, gauge: 6 });
