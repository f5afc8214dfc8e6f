import { battery, build, cable, circuit, disconnect } from "loomwright";

// A ferry shelter: the clock is tapped off the switch, behind the main fuse only.
// Expected: error protection/unprotected-path at clock
// Because: 33 CFR 183.455(a), (b): 16 AWG may carry 25 A, and the only fuse before it is 125 A.
// May follow: warning conductor/fault-withstand at clock
// May follow: warning protection/does-not-clear at battery to switch
build({ name: "branch without own fuse", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 40,
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
const fromSwitch = { from: mainSwitch.load, returnTo: bank.negative } as const;
circuit({ ...fromSwitch, name: "clock", load: 0.5, oneWayFt: 6, gauge: 16 });
circuit({
  ...fromSwitch,
  name: "lamps",
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
