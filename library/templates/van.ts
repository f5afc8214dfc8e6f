import {
  battery,
  build,
  busBar,
  cable,
  circuit,
  disconnect,
  fusePanel,
  load,
  motor,
  scenario,
  shunt,
  solarArray,
  solarController,
} from "loomwright";

// A van for weekends: one lithium battery, sun on the roof, and a fuse panel for all that is small.
// Every figure is invented. Put in those of your own parts, and measure your own lengths along the real route.
build({ name: "my van", voltage: 12, insulationC: 105, lowestC: -10 });

// The battery, and the way of its current: main fuse, main switch, positive bus; back over the shunt to the negative bus.
const bank = battery({
  name: "house battery",
  chemistry: "LiFePO4",
  capacityAh: 200,
  internalMilliohm: 4,
  maxDischargeA: 150,
  maxChargeA: 100,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 200 });
const meter = shunt({ name: "battery shunt", ratedA: 500 });
const positiveBus = busBar({ name: "positive bus", side: "positive", ratedA: 150, studs: 5 });
const negativeBus = busBar({ name: "negative bus", side: "negative", ratedA: 150, studs: 5 });

/** A family of fuses that interrupts the short of a lithium battery. */
const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;

cable({
  name: "battery to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 2,
  protect: { ...classT, ratingA: 110, distanceIn: 6 },
});
cable({ name: "switch to bus", from: mainSwitch.load, to: positiveBus.stud, lengthFt: 1, gauge: 2 });
cable({ name: "battery to shunt", from: bank.negative, to: meter.batterySide, lengthFt: 1, gauge: 2 });
cable({ name: "shunt to bus", from: meter.systemSide, to: negativeBus.stud, lengthFt: 1, gauge: 2 });

// The fuse panel. A circuit that begins at panel.branch returns to the panel too.
const panel = fusePanel({
  name: "fuse panel",
  positions: 12,
  ratedA: 100,
  branchRatedA: 30,
  branchFamily: "ISO 8820-3 Type C",
  // The blade fuses of a panel cannot interrupt the short of this bank alone. Ask the maker of yours for the tested fuse ahead of it.
  testedBehind: { family: "UL 248-15 Class T", ratingA: 60, interruptingA: 10_000 },
});
circuit({
  name: "panel feeder",
  from: positiveBus.stud,
  returnTo: negativeBus.stud,
  to: panel,
  oneWayFt: 4,
  gauge: 6,
  protect: { ...classT, ratingA: 60, distanceIn: 6 },
});

const fridge = load({ name: "fridge", powerW: 50, minimumV: 10.4 });
circuit({ name: "fridge supply", from: panel.branch, to: fridge, oneWayFt: 9, gauge: 12, protect: 7.5 });
const pump = motor({ name: "water pump", runningA: 5, startingA: 12, continuous: false });
circuit({ name: "pump supply", from: panel.branch, to: pump, oneWayFt: 12, gauge: 12, protect: 10 });
const heater = load({ name: "air heater", currentA: 8, minimumV: 10.5 });
circuit({ name: "heater supply", from: panel.branch, to: heater, oneWayFt: 10, gauge: 10, protect: 15 });
const lamps = circuit({ name: "lamps", from: panel.branch, load: 2.5, oneWayFt: 16, gauge: 16, protect: 5 });
const fan = circuit({ name: "roof fan", from: panel.branch, load: 3, oneWayFt: 12, gauge: 14, protect: 5 });
const sockets = circuit({
  name: "sockets",
  from: panel.branch,
  load: 8,
  oneWayFt: 8,
  gauge: 12,
  protect: 15,
});

// The roof. Its fuse is at the bus: there the battery can push more than the modules can.
const roof = solarArray({
  name: "roof modules",
  openCircuitV: 24.6,
  shortCircuitA: 9.8,
  maxPowerV: 20.5,
  maxPowerA: 9.1,
  openCircuitPercentPerC: -0.28,
  series: 2,
});
const controller = solarController({ name: "solar controller", maxInputV: 100, outputA: 30, outputV: 14.2 });
circuit({ name: "roof to controller", from: roof.positive, to: controller, oneWayFt: 14, gauge: 10 });
cable({
  name: "controller plus",
  from: controller.positive,
  to: positiveBus.stud,
  lengthFt: 4,
  gauge: 8,
  protectFarEnd: { ...classT, ratingA: 40, distanceIn: 6 },
});
cable({ name: "controller minus", from: controller.negative, to: negativeBus.stud, lengthFt: 4, gauge: 8 });

// Loads that are on at the same time. The worst of these decides about every conductor, fuse and voltage.
scenario({ name: "evening, cooking and lamps", on: [fridge, pump, lamps, sockets] });
scenario({ name: "winter night", on: [fridge, heater], chargePercent: 40 });
scenario({ name: "summer noon", on: [fridge, fan, sockets], sunPercent: 100 });
