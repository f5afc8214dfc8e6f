import {
  battery,
  build,
  cable,
  circuit,
  disconnect,
  fusePanel,
  load,
  motor,
  scenario,
  solarArray,
  solarController,
} from "loomwright";

// A hut without a mains supply: 24 V of lithium, four modules on the roof, metric conductors.
// Every figure is invented. Put in those of your own parts, and measure your own lengths along the real route.
build({ name: "my hut", voltage: 24, insulationC: 90, lowestC: -15 });

const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  nominalV: 25.6,
  capacityAh: 100,
  internalMilliohm: 8,
  maxDischargeA: 100,
  maxChargeA: 50,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 100 });
const panel = fusePanel({
  name: "fuse panel",
  positions: 8,
  ratedA: 80,
  branchRatedA: 30,
  branchFamily: "ISO 8820-3 Type C",
  // The blade fuses of a panel cannot interrupt the short of this bank alone. Ask the maker of yours for the tested fuse ahead of it.
  testedBehind: { family: "UL 248-15 Class T", ratingA: 80, interruptingA: 10_000 },
});

/** A family of fuses that interrupts the short of a lithium battery. */
const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;

cable({
  name: "bank to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthM: 0.6,
  mm2: 25,
  protect: { ...classT, ratingA: 80, distanceMm: 150 },
});
cable({ name: "switch to panel", from: mainSwitch.load, to: panel.feed, lengthM: 1, mm2: 25 });
cable({ name: "panel return", from: panel.negative, to: bank.negative, lengthM: 1.5, mm2: 25 });

// The sun. The controller takes one position of the panel, and its fuse there is for the battery's current.
const roof = solarArray({
  name: "roof modules",
  openCircuitV: 22.4,
  shortCircuitA: 5.9,
  maxPowerV: 18.4,
  maxPowerA: 5.4,
  openCircuitPercentPerC: -0.3,
  series: 2,
  parallel: 2,
  maxSeriesFuseA: 15,
});
const controller = solarController({ name: "solar controller", maxInputV: 100, outputA: 20, outputV: 28.4 });
circuit({ name: "roof to controller", from: roof.positive, to: controller, oneWayM: 8, mm2: 6 });
cable({
  name: "controller plus",
  from: panel.branch,
  to: controller.positive,
  lengthM: 1,
  mm2: 6,
  protect: 25,
});
cable({ name: "controller minus", from: controller.negative, to: panel.negative, lengthM: 1, mm2: 6 });

const fridge = load({ name: "fridge", powerW: 60, minimumV: 21.3 });
circuit({ name: "fridge supply", from: panel.branch, to: fridge, oneWayM: 4, mm2: 2.5, protect: 5 });
const pump = motor({ name: "well pump", runningA: 4, startingA: 10, continuous: false });
circuit({ name: "pump supply", from: panel.branch, to: pump, oneWayM: 12, mm2: 4, protect: 7.5 });
const lamps = circuit({
  name: "room lamps",
  from: panel.branch,
  loadW: 20,
  oneWayM: 8,
  mm2: 1.5,
  protect: 3,
});
const porch = circuit({
  name: "porch lamp",
  from: panel.branch,
  loadW: 8,
  oneWayM: 10,
  mm2: 1.5,
  protect: 3,
});
const sockets = circuit({ name: "sockets", from: panel.branch, load: 3, oneWayM: 5, mm2: 2.5, protect: 5 });

scenario({ name: "winter evening", on: [fridge, lamps, porch, sockets], chargePercent: 50 });
scenario({ name: "pump and sun", on: [fridge, pump], sunPercent: 80 });
scenario({ name: "empty hut", on: [fridge], sunPercent: 100 });
