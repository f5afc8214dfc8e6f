import { battery, build, cable, circuit, disconnect } from "loomwright";

// A boat: the refrigerator at the end of 25 ft of lamp wire.
// Expected: warning conductor/voltage-drop at fridge
// Because: ISO 10133:2012, 4.8: 3 %; 5 A over 50 ft of 16 AWG lose 1 V.
build({ name: "fridge on 16", voltage: 12, insulationC: 105, installedIn: "boat" });
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
circuit({ ...rails, name: "fridge", load: 5, critical: true, oneWayFt: 25, gauge: 16, protect: classT(10) });
