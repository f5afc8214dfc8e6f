import { battery, build, cable, circuit, disconnect } from "loomwright";

// A van: a blade fuse at the terminal of a lithium battery.
// Expected: error protection/interrupting at plus
// Because: IEC 60364-4-43, 434.5.1: ISO 8820-3 interrupts 1,000 A, the battery gives more than 2,000 A.
build({ name: "blade first on lithium", voltage: 12, insulationC: 105 });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const house = battery({
  name: "house",
  chemistry: "LiFePO4",
  capacityAh: 100,
  internalMilliohm: 6,
  maxDischargeA: 100,
  maxChargeA: 50,
});
const off = disconnect({ name: "switch", ratedA: 100 });
cable({
  name: "plus",
  from: house.positive,
  to: off.line,
  lengthFt: 2,
  gauge: 6,
  protect: { ratingA: 80, family: "ISO 8820-3 Type E", distanceIn: 5 },
});
circuit({
  name: "lamps",
  from: off.load,
  returnTo: house.negative,
  load: 4,
  oneWayFt: 8,
  gauge: 14,
  protect: classT(6),
});
