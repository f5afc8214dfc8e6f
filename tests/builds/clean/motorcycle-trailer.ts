import { battery, build, cable, circuit, disconnect, shoreCharger } from "loomwright";

// A camping trailer for a motorcycle: one small lithium battery, two lamps, a compressor for air beds.
build({ name: "motorcycle trailer", voltage: 12, insulationC: 105, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "battery",
  chemistry: "LiFePO4",
  capacityAh: 20,
  internalMilliohm: 20,
  maxDischargeA: 20,
  maxChargeA: 10,
});
const off = disconnect({ name: "switch", ratedA: 30 });
cable({ name: "plus", from: bank.positive, to: off.line, lengthFt: 0.8, gauge: 10, protect: classT(20) });
const rails = { from: off.load, returnTo: bank.negative } as const;
circuit({ ...rails, name: "tent lamps", load: 1, oneWayFt: 8, gauge: 16, protect: classT(3) });
circuit({
  ...rails,
  name: "compressor",
  load: 8,
  continuous: false,
  oneWayFt: 4,
  gauge: 12,
  protect: classT(10),
});
const charger = shoreCharger({ name: "charger", outputA: 5, outputV: 14.4 });
cable({
  name: "charger plus",
  from: charger.positive,
  to: off.load,
  lengthFt: 2,
  gauge: 14,
  protectFarEnd: classT(10),
});
cable({ name: "charger minus", from: charger.negative, to: bank.negative, lengthFt: 2, gauge: 14 });
