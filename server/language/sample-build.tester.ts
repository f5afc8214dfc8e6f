/**
 * A whole small build, in order with every rule: a bank, a switch, a panel with a heater on it, and an inverter behind the
 * switch. Only for tests, each of which changes one thing.
 */
export const sampleBuild = `import { battery, build, cable, circuit, disconnect, fusePanel, inverter, scenario } from "loomwright";

build({ insulationC: 105 });
const bank = battery({
  name: "house bank",
  chemistry: "LiFePO4",
  capacityAh: 200,
  internalMilliohm: 4,
  maxDischargeA: 150,
  source: "data sheet p. 3",
});
const off = disconnect({ name: "main switch", ratedA: 200 });
const panel = fusePanel({ name: "fuse panel", positions: 6, ratedA: 100, branchRatedA: 30 });
const kettle = inverter({ name: "kettle inverter", continuousW: 600, cutOffV: 10.5 });
cable({
  name: "bank to switch",
  from: bank.positive,
  to: off.line,
  lengthFt: 1,
  gauge: 2,
  protect: { ratingA: 100, family: "UL 248-15 Class T", distanceIn: 6, interruptingA: 20_000 },
});
cable({ name: "feeder", from: off.load, to: panel.feed, lengthFt: 4, gauge: 4 });
cable({ name: "panel return", from: panel.negative, to: bank.negative, lengthFt: 5, gauge: 4 });
circuit({
  name: "heater",
  from: panel.branch,
  load: 15,
  oneWayFt: 12,
  gauge: 10,
  protect: { ratingA: 20, interruptingA: 5_000 },
});
circuit({ name: "inverter supply", from: off.load, returnTo: bank.negative, to: kettle, oneWayFt: 3, gauge: 2 });
scenario({ name: "evening", off: [kettle], chargePercent: 50 });
scenario({ name: "cooking" });
`;
