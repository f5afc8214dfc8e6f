import { battery, build, cable, circuit, disconnect, shoreCharger } from "loomwright";

// An old launch of 32 V: four batteries of 8 V in series, fuses for 125 V.
build({ name: "old launch", voltage: 32, insulationC: 105, installedIn: "boat" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const of8 = {
  chemistry: "flooded lead-acid",
  nominalV: 8,
  capacityAh: 170,
  internalMilliohm: 2.5,
  maxDischargeA: 300,
  maxChargeA: 35,
} as const;
const stern = battery({ ...of8, name: "stern battery" });
const second = battery({ ...of8, name: "second battery" });
const third = battery({ ...of8, name: "third battery" });
const bow = battery({ ...of8, name: "bow battery" });
cable({ name: "stern link", from: stern.positive, to: second.negative, lengthFt: 1, gauge: 2 });
cable({ name: "middle link", from: second.positive, to: third.negative, lengthFt: 1, gauge: 2 });
cable({ name: "bow link", from: third.positive, to: bow.negative, lengthFt: 1, gauge: 2 });
const off = disconnect({ name: "switch", ratedA: 150 });
cable({ name: "bank plus", from: bow.positive, to: off.line, lengthFt: 2, gauge: 2, protect: classT(125) });
circuit({
  name: "cabin lamps",
  from: off.load,
  returnTo: stern.negative,
  load: 3,
  oneWayFt: 20,
  gauge: 14,
  protect: classT(6),
});
circuit({
  name: "bilge pump",
  from: bow.positive,
  returnTo: stern.negative,
  load: 3,
  critical: true,
  oneWayFt: 12,
  gauge: 14,
  protect: classT(6),
});
circuit({
  name: "wash pump",
  from: off.load,
  returnTo: stern.negative,
  load: 8,
  continuous: false,
  oneWayFt: 14,
  gauge: 12,
  protect: classT(10),
});
const charger = shoreCharger({ name: "charger", outputA: 20, outputV: 38.4 });
cable({
  name: "charger plus",
  from: charger.positive,
  to: off.load,
  lengthFt: 4,
  gauge: 10,
  protectFarEnd: classT(30),
});
cable({ name: "charger minus", from: charger.negative, to: stern.negative, lengthFt: 4, gauge: 10 });
