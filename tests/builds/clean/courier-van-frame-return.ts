import { battery, build, cable, chassis, circuit, disconnect } from "loomwright";

// A courier van: the lamps return through the body, bonded with a strap as thick as the fuse asks.
build({ name: "courier van", voltage: 12, insulationC: 105, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 40,
});
const off = disconnect({ name: "main switch", ratedA: 150 });
const body = chassis({ name: "body", milliohm: 0.5 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 4, protect: classT(100) });
cable({ name: "bank minus", from: bank.negative, to: body.bond, lengthFt: 1, gauge: 4 });
circuit({
  name: "load lamps",
  from: off.load,
  returnTo: body.metal,
  load: 4,
  oneWayFt: 10,
  gauge: 12,
  protect: classT(10),
});
circuit({
  name: "scanner",
  from: off.load,
  returnTo: body.metal,
  load: 5,
  oneWayFt: 6,
  gauge: 12,
  protect: classT(10),
});
