import { battery, build, busBar, cable, circuit, disconnect, shunt, starterMotor } from "loomwright";

// A launch: the starter's minus leads straight to the battery, the meter counts the rest.
build({ name: "launch with a meter", voltage: 12, insulationC: 105, installedIn: "boat" });
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
const off = disconnect({ name: "main switch", ratedA: 300, momentaryA: 900 });
const meter = shunt({ name: "meter", ratedA: 100 });
const minus = busBar({ name: "minus bar", side: "negative", ratedA: 150, studs: 6 });
const starter = starterMotor({ name: "starter", crankingA: 350, minimumV: 8 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: "2/0" });
cable({ name: "starter plus", from: off.load, to: starter.positive, lengthFt: 4, gauge: "2/0" });
cable({ name: "starter minus", from: starter.negative, to: bank.negative, lengthFt: 4, gauge: "2/0" });
cable({ name: "metered minus", from: minus.stud, to: meter.systemSide, lengthFt: 1, gauge: 6 });
cable({ name: "meter minus", from: meter.batterySide, to: bank.negative, lengthFt: 1, gauge: 6 });
const rails = { from: off.load, returnTo: minus.stud } as const;
circuit({ ...rails, name: "lamps", load: 3, oneWayFt: 8, gauge: 14, protect: classT(6) });
circuit({ ...rails, name: "sounder", load: 2, oneWayFt: 8, gauge: 14, protect: classT(6) });
