import { battery, build, busBar, cable, circuit, disconnect, load } from "loomwright";

// A lorry of 24 V: the strip lights of a 12 V caravan, which work from 9.5 V on.
// Expected: info part/other-voltage at strip lights
// Because: Common practice (no source): a device works down to some four fifths of its nominal voltage; one that works at 9.5 V is
//   made for 12 V, and 24 V destroys it unless it has a wide range.
build({ name: "horse lorry with strip lights", voltage: 24, insulationC: 105, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "AGM",
  nominalV: 24,
  capacityAh: 120,
  internalMilliohm: 6,
  maxDischargeA: 300,
  maxChargeA: 30,
});
const off = disconnect({ name: "main switch", ratedA: 150 });
const plus = busBar({ name: "plus bar", side: "positive", ratedA: 150, studs: 8 });
const minus = busBar({ name: "minus bar", side: "negative", ratedA: 150, studs: 8 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 4, protect: classT(80) });
cable({ name: "switched plus", from: off.load, to: plus.stud, lengthFt: 1, gauge: 4 });
cable({ name: "bank minus", from: minus.stud, to: bank.negative, lengthFt: 2, gauge: 4 });
const rails = { from: plus.stud, returnTo: minus.stud } as const;
circuit({ ...rails, name: "pump", load: 4, continuous: false, oneWayFt: 9, gauge: 14, protect: classT(10) });
const strips = load({ name: "strip lights", currentA: 3, minimumV: 9.5 });
circuit({ ...rails, name: "strip wires", to: strips, oneWayFt: 10, gauge: 14, protect: classT(6) });
