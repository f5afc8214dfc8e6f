import { alternator, battery, build, cable, circuit, disconnect, starterMotor } from "loomwright";

// A launch with one battery: the alternator charges through the battery switch, which cuts it off when somebody turns it.
// Expected: warning alternator/load-dump at alternator
// Because: Common practice (ISO 16750-2 names the load dump, not read): an alternator that loses its battery at full current surges; its
//   plus belongs on the battery's side of the switch.
build({ name: "alternator behind switch", voltage: 12, insulationC: 105, installedIn: "boat" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const start = battery({
  name: "start",
  chemistry: "flooded lead-acid",
  capacityAh: 90,
  internalMilliohm: 5,
  maxDischargeA: 700,
  maxChargeA: 60,
});
const off = disconnect({ name: "engine switch", ratedA: 300 });
const starter = starterMotor({ name: "starter", crankingA: 200, minimumV: 8.5 });
cable({ name: "plus", from: start.positive, to: off.line, lengthFt: 2, gauge: "1/0" });
cable({ name: "crank", from: off.load, to: starter.positive, lengthFt: 4, gauge: "1/0" });
cable({ name: "back", from: starter.negative, to: start.negative, lengthFt: 5, gauge: "1/0" });
const engine = alternator({ name: "alternator", ratedA: 60 });
cable({
  name: "alternator plus",
  from: engine.positive,
  to: off.load,
  lengthFt: 4,
  gauge: 4,
  protectFarEnd: classT(80),
});
cable({ name: "alternator minus", from: engine.negative, to: start.negative, lengthFt: 4, gauge: 4 });
circuit({
  name: "blower",
  from: off.load,
  returnTo: start.negative,
  load: 5,
  critical: true,
  oneWayFt: 6,
  gauge: 12,
  protect: classT(10),
});
