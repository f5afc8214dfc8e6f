import { battery, build, busBar, cable, circuit, disconnect, solarArray, solarController } from "loomwright";

// A hut with a gel battery.
build({ name: "metric gel hut", voltage: 12, insulationC: 70, installedIn: "building" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "gel",
  capacityAh: 120,
  internalMilliohm: 6,
  maxDischargeA: 150,
  maxChargeA: 25,
});
const off = disconnect({ name: "switch", ratedA: 60 });
const plus = busBar({ name: "plus", side: "positive", ratedA: 60, studs: 5 });
const minus = busBar({ name: "minus", side: "negative", ratedA: 60, studs: 5 });
cable({ name: "plus lead", from: bank.positive, to: off.line, lengthM: 0.4, mm2: 16, protect: classT(50) });
cable({ name: "switched", from: off.load, to: plus.stud, lengthM: 0.3, mm2: 16 });
cable({ name: "minus lead", from: bank.negative, to: minus.stud, lengthM: 0.6, mm2: 16 });
const rails = { from: plus.stud, returnTo: minus.stud } as const;
circuit({ ...rails, name: "lamps", load: 2, oneWayM: 7, mm2: 1.5, protect: classT(3) });
circuit({ ...rails, name: "pump", load: 5, continuous: false, oneWayM: 5, mm2: 2.5, protect: classT(10) });
const roof = solarArray({
  name: "roof",
  openCircuitV: 22,
  shortCircuitA: 6,
  maxPowerV: 18,
  maxPowerA: 5.6,
  parallel: 2,
  lowestC: -15,
});
const sun = solarController({ name: "controller", maxInputV: 50, outputA: 20, outputV: 14.1 });
circuit({ name: "roof pair", from: roof.positive, returnTo: roof.negative, to: sun, oneWayM: 6, mm2: 6 });
cable({ name: "sun plus", from: sun.positive, to: plus.stud, lengthM: 1, mm2: 6, protectFarEnd: classT(30) });
cable({ name: "sun minus", from: sun.negative, to: minus.stud, lengthM: 1, mm2: 6 });
