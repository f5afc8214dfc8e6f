import { battery, breaker, build, cable, circuit, disconnect } from "loomwright";

// A van: the main breaker of a lithium bank states no interrupting rating.
// Expected: info protection/interrupting at main breaker
// Because: IEC 60364-4-43, 434.5.1: the device interrupts the short where it is; a breaker's marking alone shows it.
build({ name: "breaker unmarked on lithium", voltage: 12, insulationC: 105 });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const house = battery({
  name: "house",
  chemistry: "LiFePO4",
  capacityAh: 200,
  internalMilliohm: 4,
  maxDischargeA: 200,
  maxChargeA: 100,
});
const main = breaker({ name: "main breaker", ratingA: 100, ratedV: 48, on: house.positive });
const off = disconnect({ name: "switch", ratedA: 150 });
cable({ name: "plus", from: main.load, to: off.line, lengthFt: 2, gauge: 4 });
circuit({
  name: "lamps",
  from: off.load,
  returnTo: house.negative,
  load: 4,
  oneWayFt: 8,
  gauge: 14,
  protect: classT(6),
});
