import { battery, build, cable, circuit, disconnect } from "loomwright";

// A van: the main fuse of a lithium bank states no family.
// Expected: error protection/interrupting at plus
// Because: IEC 60364-4-43, 434.5.1: no family of ISO 8820 or ISO 20934 interrupts 3,650 A.
build({ name: "unknown fuse on lithium", voltage: 12, insulationC: 105 });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const house = battery({
  name: "house",
  chemistry: "LiFePO4",
  capacityAh: 100,
  internalMilliohm: 4,
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
  protect: { ratingA: 80, distanceIn: 5 },
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
