import { alternator, battery, build, cable, circuit, disconnect } from "loomwright";

// A lorry of 24 V: the lead from the alternator to the batteries has no fuse at either end.
// Expected: error protection/unprotected-path at alternator plus
// Because: 33 CFR 183.455(b) and 183.460: a conductor that a battery can feed has a device near the battery.
build({ name: "gravel lorry", voltage: 24, insulationC: 90, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceMm: 120 }) as const;
const of12 = {
  chemistry: "flooded lead-acid",
  nominalV: 12,
  capacityAh: 180,
  internalMilliohm: 3,
  maxDischargeA: 900,
  maxChargeA: 80,
} as const;
const lower = battery({ ...of12, name: "lower battery" });
const upper = battery({ ...of12, name: "upper battery" });
cable({ name: "link", from: lower.positive, to: upper.negative, lengthM: 0.3, mm2: 70 });
const machine = alternator({ name: "alternator", ratedA: 75 });
cable({
  name: "alternator plus",
  from: machine.positive,
  to: upper.positive,
  lengthM: 3,
  mm2: 35,
  engineSpace: true,
});
cable({
  name: "alternator minus",
  from: machine.negative,
  to: lower.negative,
  lengthM: 3,
  mm2: 35,
  engineSpace: true,
});
const off = disconnect({ name: "switch", ratedA: 150 });
cable({ name: "plus", from: upper.positive, to: off.line, lengthM: 0.6, mm2: 35, protect: classT(110) });
circuit({
  name: "work lamps",
  from: off.load,
  returnTo: lower.negative,
  load: 10,
  oneWayM: 6,
  mm2: 4,
  protect: classT(15),
});
