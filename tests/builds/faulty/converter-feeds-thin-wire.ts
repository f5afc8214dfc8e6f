import { battery, build, busBar, cable, circuit, dcDcCharger, disconnect } from "loomwright";

// A lorry of 24 V: a converter gives 30 A at 12 V, and the reading lamp's wire of 18 AWG leaves it without a fuse.
// Expected: error protection/unprotected-path at reading lamp
// Because: 33 CFR 183.455: 18 AWG in a sheath may carry 20 A, the converter gives 30 A into a fault.
// May follow: error conductor/ampacity at reading lamp
build({ name: "lorry with a converter", voltage: 24, insulationC: 105, installedIn: "vehicle" });
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
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 4, protect: classT(100) });
cable({ name: "switched plus", from: off.load, to: plus.stud, lengthFt: 1, gauge: 4 });
cable({ name: "bank minus", from: minus.stud, to: bank.negative, lengthFt: 2, gauge: 4 });
const rails = { from: plus.stud, returnTo: minus.stud } as const;
const converter = dcDcCharger({
  name: "converter",
  outputA: 30,
  outputV: 13.2,
  inputMinV: 21,
  runs: "always",
});
circuit({ ...rails, name: "converter feed", to: converter, oneWayFt: 4, gauge: 8, protect: classT(30) });
const twelve = busBar({ name: "12 volt bar", side: "positive", ratedA: 60, studs: 6 });
cable({ name: "converter plus", from: converter.outputPositive, to: twelve.stud, lengthFt: 2, gauge: 8 });
circuit({
  name: "radio",
  from: twelve.stud,
  returnTo: minus.stud,
  load: 5,
  oneWayFt: 8,
  gauge: 14,
  protect: classT(10),
});
circuit({
  name: "reading lamp",
  from: twelve.stud,
  returnTo: minus.stud,
  load: 0.5,
  oneWayFt: 6,
  gauge: 18,
  sheathed: true,
});
