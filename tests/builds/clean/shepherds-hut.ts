import {
  battery,
  build,
  cable,
  circuit,
  disconnect,
  fusePanel,
  load,
  scenario,
  solarArray,
  solarController,
} from "loomwright";

// A shepherd's hut: 24 V lithium, one string of modules, a refrigerator, and the nights of winter in its scenarios.
build({ name: "shepherd's hut", voltage: 24, insulationC: 90, lowestC: -15 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  capacityAh: 100,
  internalMilliohm: 12,
  maxDischargeA: 80,
  maxChargeA: 50,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 100 });
const panel = fusePanel({ name: "panel", positions: 8, ratedA: 80, branchRatedA: 40 });
cable({
  name: "bank to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthM: 0.5,
  mm2: 16,
  protect: { ...classT, ratingA: 60, distanceMm: 150 },
});
cable({ name: "switch to panel", from: mainSwitch.load, to: panel.feed, lengthM: 0.5, mm2: 16 });
cable({ name: "panel minus", from: panel.negative, to: bank.negative, lengthM: 1, mm2: 16 });

const roof = solarArray({
  name: "roof",
  openCircuitV: 37,
  shortCircuitA: 9.2,
  maxPowerV: 30.5,
  maxPowerA: 8.7,
  openCircuitPercentPerC: -0.3,
  series: 2,
});
const sun = solarController({ name: "sun controller", maxInputV: 100, outputA: 20, outputV: 28.2 });
circuit({ name: "roof to controller", from: roof.positive, to: sun, oneWayM: 6, mm2: 6 });
cable({
  name: "controller plus",
  from: panel.branch,
  to: sun.positive,
  lengthM: 1,
  mm2: 6,
  protect: { ...classT, ratingA: 30 },
});
cable({ name: "controller minus", from: sun.negative, to: panel.negative, lengthM: 1, mm2: 6 });

const fridge = load({ name: "refrigerator", powerW: 70, minimumV: 21 });
circuit({
  name: "refrigerator supply",
  from: panel.branch,
  to: fridge,
  oneWayM: 4,
  mm2: 2.5,
  protect: { ...classT, ratingA: 6 },
});
const lamps = circuit({
  name: "lamps",
  from: panel.branch,
  load: 1.5,
  oneWayM: 6,
  mm2: 1.5,
  protect: { ...classT, ratingA: 3 },
});
scenario({ name: "winter night", on: [lamps, fridge], chargePercent: 20 });
scenario({ name: "summer noon", on: [fridge], sunPercent: 100, chargePercent: 90 });
