import { battery, build, cable, disconnect, motor } from "loomwright";

// A recovery lorry: the winch has two cables of 2 AWG for its plus, and one for its minus.
// Expected: error conductor/ampacity at winch minus
// Because: 33 CFR 183.425(b), Table 5: 2 AWG may carry 210 A, 300 A return through it.
// May follow: error protection/return-conductor at winch minus
// May follow: error network/unconnected at winch
build({ name: "recovery lorry", voltage: 12, insulationC: 105, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "AGM",
  capacityAh: 200,
  internalMilliohm: 2,
  maxDischargeA: 800,
  maxChargeA: 60,
});
const off = disconnect({ name: "winch switch", ratedA: 400 });
cable({
  name: "bank plus",
  from: bank.positive,
  to: off.line,
  lengthFt: 2,
  gauge: "4/0",
  protect: classT(400),
});
const winch = motor({ name: "winch", runningA: 300, startingA: 420, continuous: false });
cable({ name: "winch plus", from: off.load, to: winch.positive, lengthFt: 5, gauge: 2, parallel: 2 });
cable({ name: "winch minus", from: winch.negative, to: bank.negative, lengthFt: 6, gauge: 2 });
