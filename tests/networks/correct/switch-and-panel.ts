import { battery, build, cable, circuit, disconnect, fusePanel } from "loomwright";

build({ insulationC: 105 });
const bank = battery({ chemistry: "flooded lead-acid", capacityAh: 100, shortCircuitA: 1_200 });
const off = disconnect({ name: "battery switch", ratedA: 100 });
const panel = fusePanel({ name: "panel", positions: 6, ratedA: 60, branchRatedA: 30 });
cable({
  name: "battery to switch",
  from: bank.positive,
  to: off.line,
  lengthFt: 3,
  gauge: 6,
  protect: { ratingA: 60, family: "UL 248-15 Class T", distanceIn: 7, interruptingA: 20_000 },
});
cable({ name: "switch to panel", from: off.load, to: panel.feed, lengthFt: 4, gauge: 6 });
cable({ name: "panel return", from: panel.negative, to: bank.negative, lengthFt: 7, gauge: 6 });
for (const [name, load] of [
  ["lights", 3],
  ["pump", 6],
  ["fan", 2],
] as const)
  circuit({ name, from: panel.branch, load, oneWayFt: 10, gauge: 12, protect: 10 });
