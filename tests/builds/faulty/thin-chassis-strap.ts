import { battery, build, cable, chassis, circuit, disconnect, motor } from "loomwright";

// A breakdown van: the strap from battery to body was taken from the scrap box.
// Expected: error conductor/ampacity at strap
// Because: 33 CFR 183.425(b), Table 5: 10 AWG may carry 60 A, and the winch's 110 A return through it.
// May follow: error protection/return-conductor at strap
build({ name: "thin chassis strap", voltage: 12, insulationC: 105 });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 400,
});
const off = disconnect({ name: "switch", ratedA: 200 });
cable({ name: "plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 2, protect: classT(150) });
const body = chassis({ name: "body", milliohm: 0.3 });
cable({ name: "strap", from: bank.negative, to: body.bond, lengthFt: 1, gauge: 10 });
const winch = motor({ name: "winch", runningA: 110, startingA: 150, continuous: false });
circuit({
  name: "winch cable",
  from: off.load,
  returnTo: body.metal,
  to: winch,
  positiveFt: 6,
  negativeFt: 1,
  gauge: 2,
});
