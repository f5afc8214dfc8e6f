import { battery, build, cable, circuit, disconnect, shunt, starterMotor } from "loomwright";

// A launch: the starter's minus ends on the system side of a battery meter of 100 A.
// Expected: error part/rating at meter
// Because: Maker's rating: 420 A through a shunt of 100 A; it overheats, and reads wrong for ever after.
build({ name: "cranked launch", voltage: 12, insulationC: 105, installedIn: "boat" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "flooded lead-acid",
  capacityAh: 110,
  internalMilliohm: 4,
  maxDischargeA: 700,
  maxChargeA: 60,
});
const off = disconnect({ name: "main switch", ratedA: 300 });
const meter = shunt({ name: "meter", ratedA: 100 });
const starter = starterMotor({ name: "starter", crankingA: 420, minimumV: 8 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: "2/0" });
cable({ name: "starter plus", from: off.load, to: starter.positive, lengthFt: 4, gauge: "2/0" });
cable({ name: "starter minus", from: starter.negative, to: meter.systemSide, lengthFt: 4, gauge: "2/0" });
cable({ name: "bank minus", from: meter.batterySide, to: bank.negative, lengthFt: 1, gauge: "2/0" });
circuit({
  name: "lamps",
  from: off.load,
  returnTo: meter.systemSide,
  load: 3,
  oneWayFt: 8,
  gauge: 14,
  protect: classT(6),
});
