import { battery, build, cable, circuit, disconnect, starterMotor } from "loomwright";

// A fishing boat: the starter's feed got a fuse of 60 A.
// Expected: warning protection/starting-current at starter plus
// Because: UL 248-15: at 4 times its rating a Class T fuse opens within seconds, and the starter draws 240 A for as long.
build({ name: "crab boat", voltage: 12, insulationC: 105, installedIn: "boat" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "flooded lead-acid",
  capacityAh: 100,
  internalMilliohm: 4,
  maxDischargeA: 600,
  maxChargeA: 60,
});
const off = disconnect({ name: "switch", ratedA: 200 });
const engine = starterMotor({ name: "starter", crankingA: 240 });
cable({ name: "bank to switch", from: bank.positive, to: off.line, lengthFt: 2, gauge: "1/0" });
cable({
  name: "starter plus",
  from: off.load,
  to: engine.positive,
  lengthFt: 4,
  gauge: "1/0",
  engineSpace: true,
  protect: classT(60),
});
cable({
  name: "starter minus",
  from: engine.negative,
  to: bank.negative,
  lengthFt: 4,
  gauge: "1/0",
  engineSpace: true,
});
circuit({
  name: "deck lamps",
  from: off.load,
  returnTo: bank.negative,
  load: 4,
  oneWayFt: 10,
  gauge: 12,
  protect: classT(10),
});
