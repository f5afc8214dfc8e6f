import {
  battery,
  build,
  cable,
  circuit,
  disconnect,
  fusePanel,
  solarArray,
  solarController,
} from "loomwright";

// A garden hut: 12 V, one gel battery, two modules in parallel on the roof, a plain controller without tracking.
build({ name: "garden hut", voltage: 12, insulationC: 90, lowestC: -10 });

const bank = battery({
  name: "gel battery",
  chemistry: "gel",
  capacityAh: 90,
  internalMilliohm: 6,
  maxDischargeA: 150,
  maxChargeA: 20,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 60 });
const panel = fusePanel({ name: "fuse panel", positions: 6, ratedA: 50, branchRatedA: 20 });

cable({
  name: "battery to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthM: 0.5,
  mm2: 16,
  protect: { ratingA: 50, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceMm: 150 },
});
cable({ name: "switch to panel", from: mainSwitch.load, to: panel.feed, lengthM: 0.5, mm2: 16 });
cable({ name: "panel return", from: panel.negative, to: bank.negative, lengthM: 1, mm2: 16 });

const roof = solarArray({
  name: "roof modules",
  openCircuitV: 22.3,
  shortCircuitA: 5.6,
  maxPowerV: 18.2,
  maxPowerA: 5.2,
  openCircuitPercentPerC: -0.3,
  parallel: 2,
  maxSeriesFuseA: 15,
});
const controller = solarController({
  name: "controller",
  maxInputV: 50,
  outputA: 20,
  outputV: 14.1,
  tracking: false,
});
circuit({ name: "roof to controller", from: roof.positive, to: controller, oneWayM: 5, mm2: 6 });
cable({
  name: "controller plus",
  from: panel.branch,
  to: controller.positive,
  lengthM: 1,
  mm2: 4,
  protect: 20,
});
cable({ name: "controller minus", from: controller.negative, to: panel.negative, lengthM: 1, mm2: 4 });

circuit({ name: "table lamp", from: panel.branch, load: 1, oneWayM: 4, mm2: 1.5, protect: 3 });
circuit({ name: "radio", from: panel.branch, load: 1.5, oneWayM: 3, mm2: 1.5, protect: 3 });
circuit({ name: "porch lamp", from: panel.branch, loadW: 6, oneWayM: 7, mm2: 1.5, protect: 3 });
