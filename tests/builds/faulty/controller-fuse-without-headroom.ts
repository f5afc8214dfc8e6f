import { battery, build, cable, circuit, disconnect, solarArray, solarController } from "loomwright";

// A fire tower: the controller gives 30 A all day, through a fuse of 30 A.
// Expected: warning protection/headroom at controller plus
// Because: NFPA 70, 690.9(B): a device carries at least 125 % of a current that flows for hours; 37.5 A.
build({ name: "fire tower", voltage: 12, insulationC: 105, installedIn: "building", lowestC: -15 });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "flooded lead-acid",
  capacityAh: 300,
  internalMilliohm: 3,
  maxDischargeA: 200,
  maxChargeA: 60,
});
const off = disconnect({ name: "switch", ratedA: 100 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 4, protect: classT(80) });
const roof = solarArray({
  name: "roof",
  openCircuitV: 24,
  shortCircuitA: 11,
  maxPowerV: 20,
  maxPowerA: 10.4,
  series: 2,
  parallel: 1,
});
const tracker = solarController({ name: "tracker", maxInputV: 100, outputA: 30, outputV: 14.4 });
circuit({
  name: "roof pair",
  from: roof.positive,
  returnTo: roof.negative,
  to: tracker,
  oneWayFt: 20,
  gauge: 8,
});
cable({
  name: "controller plus",
  from: tracker.positive,
  to: off.load,
  lengthFt: 3,
  gauge: 8,
  protectFarEnd: classT(30),
});
cable({ name: "controller minus", from: tracker.negative, to: bank.negative, lengthFt: 3, gauge: 8 });
circuit({
  name: "radio",
  from: off.load,
  returnTo: bank.negative,
  load: 8,
  oneWayFt: 10,
  gauge: 12,
  protect: classT(15),
});
