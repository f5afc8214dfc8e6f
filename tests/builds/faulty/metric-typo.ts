import { battery, build, cable, circuit, disconnect } from "loomwright";

// A boat: 25 mm² became 2.5 mm² for the windlass.
// Expected: error conductor/ampacity at windlass
// Because: ISO 10133:2012, Annex A (from memory): 2.5 mm² carries 35 A at most, the windlass draws 80 A.
// May follow: error protection/above-conductor at windlass
// May follow: warning conductor/voltage-drop at windlass
// May follow: warning protection/does-not-clear at windlass
build({ name: "metric typo", voltage: 12, insulationC: 105, installedIn: "boat" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 400,
  maxChargeA: 40,
});
const off = disconnect({ name: "battery switch", ratedA: 200 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 2, protect: classT(150) });
const rails = { from: off.load, returnTo: bank.negative } as const;
circuit({ ...rails, name: "lamps", load: 3, oneWayFt: 10, gauge: 14, protect: classT(6) });
circuit({
  ...rails,
  name: "windlass",
  load: 80,
  continuous: false,
  oneWayM: 4,
  mm2: 2.5,
  protect: classT(100),
});
