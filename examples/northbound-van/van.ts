import {
  alternator,
  battery,
  build,
  busBar,
  cable,
  circuit,
  dcDcCharger,
  disconnect,
  fusePanel,
  load,
  motor,
  period,
  scenario,
  shunt,
  solarArray,
  solarController,
} from "loomwright";
import { hung } from "./layout.ts";

// A van that follows the cranes from Andalusia to the north of Norway: one lithium battery, sun on the roof, a charger from the engine.
// Its periods show how far north and how late in the year the bank keeps up. Every figure is invented.
build({
  name: "northbound van",
  voltage: 12,
  insulationC: 105,
  lowestC: -15,
  installedIn: "vehicle",
});

/** A family of fuses that interrupts the short of a lithium battery. */
const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;

const bank = battery({
  ...hung.bank,
  name: "house battery",
  chemistry: "LiFePO4",
  capacityAh: 200,
  internalMilliohm: 4,
  maxDischargeA: 150,
  maxChargeA: 100,
  reservePercent: 20,
});
const mainSwitch = disconnect({ ...hung.mainSwitch, name: "main switch", ratedA: 200 });
const meter = shunt({ ...hung.meter, name: "battery shunt", ratedA: 500 });
const positiveBus = busBar({
  ...hung.positiveBus,
  name: "positive bus",
  side: "positive",
  ratedA: 150,
  studs: 5,
});
const negativeBus = busBar({
  ...hung.negativeBus,
  name: "negative bus",
  side: "negative",
  ratedA: 150,
  studs: 6,
});
cable({
  name: "battery to switch",
  from: bank.positive,
  to: mainSwitch.line,
  gauge: 2,
  outsideMm: 11.5,
  protect: { ...classT, ratingA: 110, distanceIn: 6 },
});
cable({ name: "switch to bus", from: mainSwitch.load, to: positiveBus.stud, gauge: 2, outsideMm: 11.5 });
cable({ name: "battery to shunt", from: bank.negative, to: meter.batterySide, gauge: 2, outsideMm: 11.5 });
cable({ name: "shunt to bus", from: meter.systemSide, to: negativeBus.stud, gauge: 2, outsideMm: 11.5 });

const panel = fusePanel({
  ...hung.panel,
  name: "fuse panel",
  positions: 12,
  ratedA: 100,
  branchRatedA: 30,
  branchFamily: "ISO 8820-3 Type C",
  // The maker of the panel states the tested fuse ahead of its blade fuses.
  testedBehind: { family: "UL 248-15 Class T", ratingA: 60, interruptingA: 10_000 },
});
circuit({
  name: "panel feeder",
  from: positiveBus.stud,
  returnTo: negativeBus.stud,
  to: panel,
  gauge: 6,
  outsideMm: 7.9,
  protect: { ...classT, ratingA: 60, distanceIn: 6 },
});

const fromPanel = { from: panel.branch } as const;
const fridge = load({ ...hung.fridge, name: "fridge", powerW: 50, minimumV: 10.4, use: { dutyPercent: 35 } });
circuit({ ...fromPanel, name: "fridge supply", to: fridge, gauge: 12, outsideMm: 4.4, protect: 7.5 });
const pump = motor({
  ...hung.pump,
  name: "water pump",
  runningA: 5,
  startingA: 12,
  continuous: false,
  use: { hoursPerDay: 0.2 },
});
circuit({ ...fromPanel, name: "pump supply", to: pump, gauge: 12, outsideMm: 4.4, protect: 10 });
// The fan and the pump of the fuel heater: by month, as it is cold outside.
const heater = load({
  ...hung.heater,
  name: "air heater",
  currentA: 8,
  minimumV: 10.5,
  use: { hoursPerDay: 10, dutyPercentByMonth: [30, 30, 25, 20, 15, 5, 5, 5, 15, 20, 30, 30] },
});
circuit({ ...fromPanel, name: "heater supply", to: heater, gauge: 10, outsideMm: 5.0, protect: 15 });
const lamps = circuit({
  ...fromPanel,
  ...hung.lamps,
  name: "lamps",
  load: 2.5,
  gauge: 16,
  outsideMm: 3.2,
  protect: 5,
  use: { hoursPerDay: 4, when: "dark" },
});
const computer = circuit({
  ...fromPanel,
  ...hung.computer,
  name: "computer",
  loadW: 60,
  gauge: 12,
  outsideMm: 4.4,
  protect: 10,
  use: { hoursPerDay: 5 },
});

// The roof. Its fuse is at the bus: there the battery can push more than the modules can.
const roof = solarArray({
  ...hung.roof,
  name: "roof modules",
  openCircuitV: 24.6,
  shortCircuitA: 9.8,
  maxPowerV: 20.5,
  maxPowerA: 9.1,
  openCircuitPercentPerC: -0.28,
  series: 2,
  tiltDeg: 0,
});
const controller = solarController({
  ...hung.controller,
  name: "solar controller",
  maxInputV: 100,
  outputA: 30,
  outputV: 14.2,
});
circuit({ name: "roof to controller", from: roof.positive, to: controller, gauge: 10, outsideMm: 5.0 });
cable({
  name: "controller plus",
  from: controller.positive,
  to: positiveBus.stud,
  gauge: 8,
  outsideMm: 6.6,
  protectFarEnd: { ...classT, ratingA: 40, distanceIn: 6 },
});
cable({
  name: "controller minus",
  from: controller.negative,
  to: negativeBus.stud,
  gauge: 8,
  outsideMm: 6.6,
});

// The vehicle's own battery and its alternator, and the charger between the two systems.
const starter = battery({
  ...hung.starter,
  name: "starter battery",
  chemistry: "AGM",
  capacityAh: 80,
  shortCircuitA: 2_000,
  maxChargeA: 150,
});
// Both systems have one negative side: the charger has no return of its own.
cable({ name: "bond", from: negativeBus.stud, to: starter.negative, gauge: 4, outsideMm: 9.5 });
const engine = alternator({ ...hung.engine, name: "alternator", ratedA: 140 });
cable({
  name: "alternator plus",
  from: engine.positive,
  to: starter.positive,
  gauge: "1/0",
  outsideMm: 14.5,
  protectFarEnd: { ...classT, ratingA: 175, distanceIn: 6 },
});
cable({
  name: "alternator minus",
  from: engine.negative,
  to: starter.negative,
  gauge: "1/0",
  outsideMm: 14.5,
});
const fromEngine = dcDcCharger({
  ...hung.fromEngine,
  name: "charger from the engine",
  outputA: 30,
  outputV: 14.2,
  inputMinV: 12,
});
circuit({
  name: "charger input",
  from: starter.positive,
  returnTo: starter.negative,
  to: fromEngine,
  gauge: 4,
  outsideMm: 9.5,
  protect: { ...classT, ratingA: 60, distanceIn: 6 },
});
cable({
  name: "charger plus",
  from: fromEngine.outputPositive,
  to: positiveBus.stud,
  gauge: 8,
  outsideMm: 6.6,
  protectFarEnd: { ...classT, ratingA: 40, distanceIn: 6 },
});

scenario({ name: "evening, cooking and lamps", on: [fridge, pump, lamps, computer] });
scenario({ name: "winter night", on: [fridge, heater], chargePercent: 40 });
scenario({ name: "on the road, in the sun", on: [fridge, computer], engine: true, sunPercent: 100 });

// The journey. Driving hours are those of the days on the road, spread over the month.
const onTheRoad = { hoursPerDay: 2, everyDays: 2 } as const;
// The battery is under the bed, in the warm.
const inside = { bankHeated: true } as const;
period({ ...inside, name: "Andalusia in March", place: "Tarifa, ES", months: ["Mar"], driving: onTheRoad });
period({ ...inside, name: "Sweden in May", place: "Linkoping, SE", months: ["May"], driving: onTheRoad });
period({
  ...inside,
  name: "Lapland in summer",
  place: "Kiruna, SE",
  fromDay: "1 Jun",
  untilDay: "31 Jul",
  driving: { hoursPerDay: 2, everyDays: 7 },
});
// Late for the journey back: the sun no longer rises above the mountains, and the engine is all that charges.
period({ ...inside, name: "Lapland in November", place: "Kiruna, SE", months: ["Nov"], driving: onTheRoad });
