import { battery, build, cable, chassis, circuit, disconnect } from "loomwright";

// An aluminium boat: the deck lights and the pump return through the hull.
// Expected: error network/hull-return at hull
// Because: 46 CFR 111.05-11(a) and 120.370(a): the hull must not carry current as a conductor; stray current eats it.
build({ name: "aluminium boat", voltage: 12, insulationC: 105, installedIn: "boat" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 400,
  maxChargeA: 60,
});
const off = disconnect({ name: "main switch", ratedA: 150 });
const hull = chassis({ name: "hull", milliohm: 0.5 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 4, protect: classT(100) });
cable({ name: "bank minus", from: bank.negative, to: hull.bond, lengthFt: 2, gauge: 4 });
circuit({
  name: "deck lights",
  from: off.load,
  returnTo: hull.metal,
  load: 6,
  oneWayFt: 10,
  gauge: 12,
  protect: classT(10),
});
circuit({
  name: "wash pump",
  from: off.load,
  returnTo: hull.metal,
  load: 8,
  continuous: false,
  oneWayFt: 10,
  gauge: 12,
  protect: classT(10),
});
