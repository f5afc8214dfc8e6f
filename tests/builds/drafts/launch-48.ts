import { battery, build, cable, disconnect, load } from "loomwright";

// An electric launch of 48 V: the motor controller on welding leads, a converter for the lamps.
build({ name: "electric launch", voltage: 48, insulationC: 105 });

const pack = battery({
  name: "pack",
  chemistry: "LiFePO4",
  nominalV: 51.2,
  capacityAh: 200,
  internalMilliohm: 12,
  maxDischargeA: 200,
});
const key = disconnect({ name: "key switch", ratedA: 200 });
const drive = load({ name: "drive", powerW: 6000, minimumV: 42 });
cable({
  name: "pack plus",
  from: pack.positive,
  to: key.line,
  lengthFt: 3,
  gauge: 6,
  protect: { ratingA: 150, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 8 },
});
cable({ name: "drive plus", from: key.load, to: drive.positive, lengthFt: 10, gauge: 6 });
cable({ name: "drive minus", from: drive.negative, to: pack.negative, lengthFt: 11, gauge: 6 });
