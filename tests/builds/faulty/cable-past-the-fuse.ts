import { battery, build, busBar, cable, circuit, disconnect } from "loomwright";

// A food truck: a second cable was laid from the battery to the bus beside the fused one, for less drop.
// Expected: error protection/unprotected-path at second cable
// Because: 33 CFR 183.455(b): each conductor from a source has its own device; the second cable feeds a short without any.
// May follow: error protection/missing at second cable
// May follow: warning disconnect/missing at second cable or battery
// May follow: error protection/both-ends at battery to switch
// May follow: error protection/unprotected-path at battery to switch or switch to bus
build({ name: "cable past the fuse", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 60,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 150 });
cable({
  name: "battery to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 2,
  protect: { ...classT, ratingA: 125, distanceIn: 6 },
});
const plusBus = busBar({ name: "plus bus", side: "positive", ratedA: 150 });
cable({ name: "switch to bus", from: mainSwitch.load, to: plusBus.stud, lengthFt: 2, gauge: 2 });
cable({ name: "second cable", from: bank.positive, to: plusBus.stud, lengthFt: 4, gauge: 4 });
circuit({
  name: "fryer fan",
  from: plusBus.stud,
  returnTo: bank.negative,
  load: 10,
  oneWayFt: 8,
  gauge: 10,
  protect: { ...classT, ratingA: 15, distanceIn: 5 },
});
