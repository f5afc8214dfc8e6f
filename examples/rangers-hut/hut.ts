import {
  battery,
  build,
  busBar,
  cable,
  circuit,
  disconnect,
  fusePanel,
  inverter,
  load,
  motor,
  period,
  scenario,
  shunt,
  solarArray,
  solarController,
} from "loomwright";

// A ranger's hut above the tree line: 24 V, solar on the roof, everything in metric conductors.
// The nearest shop sells these spools; the prices are invented.
build({
  name: "ranger's hut",
  voltage: 24,
  insulationC: 90,
  lowestC: -25,
  spareFuses: 3,
  currency: "EUR",
  spools: [
    { mm2: 1.5, lengthM: 50, price: 24 },
    { mm2: 2.5, lengthM: 25, price: 21 },
    { mm2: 4, lengthM: 25, price: 33 },
    { mm2: 10, lengthM: 10, price: 36 },
    { mm2: 16, lengthM: 10, price: 55 },
    { mm2: 25, lengthM: 5, price: 44 },
    { mm2: 35, lengthM: 5, price: 60 },
    { mm2: 70, lengthM: 5, price: 115 },
  ],
});

// Beside the bank a fuse must be able to interrupt more than most blade and strip fuses can.
const classT = { family: "UL 248-15 Class T", interruptingA: 20_000 } as const;

// Two strings of two 12 V batteries, each string with a fuse of its own: a fault in one is not fed by the other.
const cell = {
  chemistry: "AGM",
  nominalV: 12,
  capacityAh: 150,
  internalMilliohm: 5,
  reservePercent: 50,
  termination: "M8",
} as const;
const positiveBus = busBar({
  name: "positive bus",
  side: "positive",
  ratedA: 250,
  studs: 6,
  termination: "M8",
});
const negativeBus = busBar({
  name: "negative bus",
  side: "negative",
  ratedA: 250,
  studs: 6,
  termination: "M8",
});
const meter = shunt({ name: "bank shunt", ratedA: 300, termination: "M10" });
const mainDisconnect = disconnect({ name: "main disconnect", ratedA: 250, termination: "M10" });
const bankBus = busBar({ name: "bank bus", side: "positive", ratedA: 250, studs: 4, termination: "M8" });
const bankReturn = busBar({
  name: "bank return",
  side: "negative",
  ratedA: 250,
  studs: 4,
  termination: "M8",
});

for (const side of ["left", "right"]) {
  const upper = battery({ ...cell, name: `upper battery, ${side}`, maxDischargeA: 100, maxChargeA: 45 });
  const lower = battery({ ...cell, name: `lower battery, ${side}`, maxDischargeA: 100, maxChargeA: 45 });
  cable({ name: `series link, ${side}`, from: lower.positive, to: upper.negative, lengthM: 0.3, mm2: 35 });
  cable({
    name: `string to bank bus, ${side}`,
    from: upper.positive,
    to: bankBus.stud,
    lengthM: 0.6,
    mm2: 35,
    protect: { ...classT, ratingA: 100, distanceMm: 150 },
  });
  cable({ name: `string return, ${side}`, from: lower.negative, to: bankReturn.stud, lengthM: 0.6, mm2: 35 });
}
cable({ name: "bank to disconnect", from: bankBus.stud, to: mainDisconnect.line, lengthM: 0.4, mm2: 70 });
cable({ name: "disconnect to bus", from: mainDisconnect.load, to: positiveBus.stud, lengthM: 0.4, mm2: 70 });
cable({ name: "bank to shunt", from: bankReturn.stud, to: meter.batterySide, lengthM: 0.3, mm2: 70 });
cable({ name: "shunt to bus", from: meter.systemSide, to: negativeBus.stud, lengthM: 0.3, mm2: 70 });

/** What every pair from the bus bars has in common. */
const fromBus = { from: positiveBus.stud, returnTo: negativeBus.stud } as const;

const panel = fusePanel({
  name: "fuse panel",
  positions: 12,
  ratedA: 100,
  branchRatedA: 30,
  termination: "M6",
  branchTermination: "screw clamp",
  // The panel's maker states this for its blade fuses.
  testedBehind: { family: "UL 248-15 Class T", ratingA: 50, interruptingA: 5_000 },
});
circuit({
  ...fromBus,
  name: "panel feeder",
  to: panel,
  oneWayM: 2,
  mm2: 16,
  protect: { ...classT, ratingA: 50, distanceMm: 120 },
});

const workshop = inverter({
  name: "inverter",
  continuousW: 1_000,
  surgeW: 1_800,
  cutOffV: 21,
  idleW: 8,
  // Switched on for the tools only, not all day.
  use: { hoursPerDay: 1.5, fromHour: 8, untilHour: 17 },
  devices: [{ name: "drill and charger", powerW: 400, use: { hoursPerDay: 0.5, when: "daylight" } }],
  termination: "M8",
});
circuit({
  ...fromBus,
  name: "inverter supply",
  to: workshop,
  oneWayM: 1.5,
  mm2: 25,
  protect: { ...classT, ratingA: 80, distanceMm: 120 },
});

// Four panels, two and two: in the cold their voltage rises, and the controller must bear it.
const roof = solarArray({
  name: "roof panels",
  openCircuitV: 45.1,
  shortCircuitA: 9.7,
  maxPowerV: 37.2,
  maxPowerA: 9.1,
  openCircuitPercentPerC: -0.3,
  maxSeriesFuseA: 20,
  series: 2,
  parallel: 2,
  tiltDeg: 60,
  facingDeg: 180,
});
const controller = solarController({
  name: "solar controller",
  maxInputV: 150,
  outputA: 40,
  outputV: 28.8,
  termination: "screw clamp",
});
// Modules cannot be switched off while the sun shines: a breaker before the controller is their isolator.
circuit({
  name: "roof to controller",
  from: roof.positive,
  to: controller,
  oneWayM: 6,
  mm2: 10,
  protectFarEnd: {
    ratingA: 35,
    family: "circuit breaker",
    ratedV: 150,
    interruptingA: 3_000,
    distanceMm: 120,
  },
});
cable({
  name: "solar, positive",
  from: controller.positive,
  to: positiveBus.stud,
  lengthM: 2,
  mm2: 16,
  protectFarEnd: { ...classT, ratingA: 50, distanceMm: 120 },
});
cable({ name: "solar, negative", from: controller.negative, to: negativeBus.stud, lengthM: 2, mm2: 16 });

const fromPanel = { from: panel.branch } as const;
const lightSize = 1.5;

const relay = load({
  name: "radio relay",
  powerW: 60,
  minimumV: 21,
  critical: true,
  use: { dutyPercent: 15 },
});
circuit({ ...fromPanel, name: "radio relay supply", to: relay, oneWayM: 6, mm2: 2.5, protect: 5 });
const pump = motor({
  name: "water pump",
  runningA: 4,
  startingA: 12,
  minimumV: 20,
  critical: true,
  use: { hoursPerDay: 0.5 },
});
circuit({
  ...fromPanel,
  name: "water pump supply",
  to: pump,
  positiveM: 9,
  negativeM: 8,
  mm2: 4,
  protect: 7.5,
});
circuit({
  ...fromPanel,
  name: "weather station",
  loadW: 5,
  oneWayM: 12,
  mm2: 1.5,
  protect: 2,
  critical: true,
  use: { dutyPercent: 100 },
});
const coolBox = circuit({
  ...fromPanel,
  name: "cool box",
  load: 3,
  oneWayM: 5,
  mm2: 2.5,
  protect: 5,
  use: { dutyPercent: 35 },
});
const stoveFan = circuit({
  ...fromPanel,
  name: "stove fan",
  load: 1.5,
  oneWayM: 4,
  mm2: lightSize,
  protect: 3,
  use: { hoursPerDay: 4, when: "dark" },
});

const lights = ["bunk room", "day room", "entrance"].map((room) =>
  circuit({
    ...fromPanel,
    name: `lights, ${room}`,
    load: 1,
    oneWayM: 8,
    mm2: lightSize,
    protect: 3,
    use: { hoursPerDay: 3, when: "dark" },
  }),
);

scenario({ name: "everything on, bank half charged", chargePercent: 50 });
scenario({ name: "noon, nothing but the relay and the cool box", on: [relay, coolBox], sunPercent: 100 });
scenario({ name: "the pump starts, bank low", starting: [pump], chargePercent: 25 });

// Above the tree line of the Alps. The rangers live here from May to the end of September; the relay and the weather station run
// all winter.
const hut = { latitudeDeg: 46.6, longitudeDeg: 9.9 } as const;
period({ ...hut, name: "open season", fromDay: "1 May", untilDay: "30 Sep" });
period({
  ...hut,
  name: "closed for the winter",
  fromDay: "1 Oct",
  untilDay: "30 Apr",
  notUsed: [workshop, pump, coolBox, stoveFan, ...lights],
});
