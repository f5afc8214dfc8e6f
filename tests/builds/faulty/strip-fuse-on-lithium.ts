import { battery, build, cable, circuit, disconnect } from "loomwright";

// A tiny house: a strip fuse as the main fuse of a large lithium bank.
// Expected: error protection/interrupting at bank to switch
// Because: IEC 60364-4-43, 434.5.1: the bank's 6,000 A exceed the 2,000 A of ISO 8820-5.
build({ name: "strip fuse on lithium", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  capacityAh: 300,
  shortCircuitA: 6000,
  maxDischargeA: 200,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 200 });
cable({
  name: "bank to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 2,
  protect: { ratingA: 150, family: "ISO 8820-5 Type SF 51", distanceIn: 6 },
});
const fromSwitch = { from: mainSwitch.load, returnTo: bank.negative } as const;
circuit({
  ...fromSwitch,
  name: "lamps",
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
