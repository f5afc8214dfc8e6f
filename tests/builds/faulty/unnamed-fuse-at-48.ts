import { battery, build, busBar, cable, circuit, disconnect } from "loomwright";

// A mountain hut at 48 V: the fuse of the router is the only one of no stated family.
// Expected: warning protection/voltage-rating at router
// Because: 33 CFR 183.455(d): the voltage rating is at least that of the circuit; most small fuses are made for 32 V.
build({ name: "hut with a router", voltage: 48, insulationC: 105, installedIn: "building" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  capacityAh: 100,
  internalMilliohm: 20,
  maxDischargeA: 100,
  maxChargeA: 50,
});
const off = disconnect({ name: "main switch", ratedA: 150 });
const plus = busBar({ name: "plus bar", side: "positive", ratedA: 150, studs: 8 });
const minus = busBar({ name: "minus bar", side: "negative", ratedA: 150, studs: 8 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 2, protect: classT(100) });
cable({ name: "switched plus", from: off.load, to: plus.stud, lengthFt: 1, gauge: 2 });
cable({ name: "bank minus", from: minus.stud, to: bank.negative, lengthFt: 2, gauge: 2 });
const rails = { from: plus.stud, returnTo: minus.stud } as const;
circuit({ ...rails, name: "lamps", load: 2, oneWayFt: 12, gauge: 14, protect: classT(6) });
circuit({ ...rails, name: "router", load: 1, oneWayFt: 10, gauge: 14, protect: 3 });
