import {
  battery,
  build,
  busBar,
  cable,
  channel,
  circuit,
  compartment,
  disconnect,
  inverter,
  surface,
} from "loomwright";

// Faulty on purpose: each channel, compartment and way below breaks one rule of ways. Do not build any of this.
// placement/not-judged: hardly a part states its size.
build({ name: "ways", voltage: 12, insulationC: 105, installedIn: "vehicle" });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 6 } as const;

// placement/battery-ventilation: 6 cells of 100 Ah need an inlet and an outlet of 16.8 cm², and the outlet has 5.
const batteryBox = compartment({ name: "battery box", inletCm2: 20, outletCm2: 5 });
const boxFloor = surface({
  name: "floor of the box",
  size: { widthMm: 600, heightMm: 400 },
  orientation: "floor",
  compartment: batteryBox,
});

// placement/conductor-clearance: the bundle passes the exhaust at 40 mm.
const wall = surface({
  name: "wall",
  size: { widthMm: 4_000, heightMm: 1_000 },
  fixtures: [
    { fixture: "source of heat", name: "the exhaust", leftMm: 2_000, topMm: 640, widthMm: 200, heightMm: 60 },
  ],
});

const bank = battery({
  name: "bank, ways",
  chemistry: "flooded lead-acid",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 100,
  at: { on: boxFloor, leftMm: 300, topMm: 200 },
});

// placement/grommet: the cables leave the box over the bare edge of the hole.
channel({
  name: "hole of the box",
  way: "hole",
  from: { on: boxFloor, leftMm: 300, topMm: 20 },
  to: { on: wall, leftMm: 100, topMm: 980 },
  lengthM: 0.02,
  grommet: false,
});
const off = disconnect({
  name: "disconnect, ways",
  ratedA: 150,
  at: { on: wall, leftMm: 100, topMm: 800 },
});
const plus = busBar({
  name: "plus, ways",
  side: "positive",
  ratedA: 150,
  at: { on: wall, leftMm: 300, topMm: 800 },
});
const minus = busBar({
  name: "minus, ways",
  side: "negative",
  ratedA: 150,
  at: { on: wall, leftMm: 350, topMm: 850 },
});
cable({
  name: "bank cable, ways",
  from: bank.positive,
  to: off.line,
  lengthM: 0.5,
  gauge: 2,
  protect: { ...classT, ratingA: 125 },
});
cable({ name: "feed, ways", from: off.load, to: plus.stud, lengthM: 0.3, gauge: 2 });
cable({ name: "return, ways", from: bank.negative, to: minus.stud, lengthM: 0.6, gauge: 2 });

const fromBus = {
  from: plus.stud,
  returnTo: minus.stud,
  gauge: 10,
  protect: { ...classT, ratingA: 10 },
} as const;

// placement/supports: a bundle that is tied every 600 mm, and 450 mm is the most.
const bundle = channel({
  name: "bundle along the wall",
  way: "bundle",
  on: wall,
  path: [
    { leftMm: 500, topMm: 600 },
    { leftMm: 3_000, topMm: 600 },
  ],
  supportsEveryMm: 600,
});
circuit({
  ...fromBus,
  name: "heater fan, ways",
  load: 6,
  oneWayM: 3.1,
  through: [bundle],
  at: { on: wall, leftMm: 3_000, topMm: 700 },
});

// placement/channel-fill: four conductors of 8 mm take 201 of 300 mm², and 40 % are permitted; the radio's two are not measured.
// placement/shared-channel: all four carry load together.
const lower = channel({
  name: "lower trunking",
  on: wall,
  path: [
    { leftMm: 500, topMm: 900 },
    { leftMm: 3_000, topMm: 900 },
  ],
  inside: { widthMm: 20, heightMm: 15 },
  fillPercent: 40,
});
for (const name of ["water pump, ways", "fridge, ways"])
  circuit({
    ...fromBus,
    name,
    load: 5,
    oneWayM: 2.9,
    outsideMm: 8,
    through: [lower],
    at: { on: wall, leftMm: 3_000, topMm: 950 },
  });

// placement/bend-radius: a bend of 20 mm, and a conductor of 8 mm needs 32.
const bent = channel({
  name: "bent trunking",
  on: wall,
  path: [
    { leftMm: 450, topMm: 700 },
    { leftMm: 450, topMm: 300 },
    { leftMm: 1_500, topMm: 300 },
  ],
  bendRadiusMm: 20,
});
circuit({
  ...fromBus,
  name: "reading lamp, ways",
  load: 2,
  oneWayM: 1.8,
  outsideMm: 8,
  through: [bent],
  at: { on: wall, leftMm: 1_500, topMm: 350 },
});

// placement/through: no way to the radio leads through the bent trunking.
circuit({
  ...fromBus,
  name: "radio, ways",
  load: 2,
  oneWayM: 1.1,
  through: [lower, bent],
  at: { on: wall, leftMm: 1_000, topMm: 950 },
});

// placement/no-way: no channel leads to the roof.
const roof = surface({ name: "roof", size: { widthMm: 2_000, heightMm: 1_000 }, orientation: "ceiling" });
circuit({
  ...fromBus,
  name: "roof lamp, ways",
  load: 1,
  oneWayM: 3,
  at: { on: roof, leftMm: 500, topMm: 500 },
});

// placement/stated-length: 0.3 m are stated, and the way is 0.35 m.
circuit({
  ...fromBus,
  name: "horn, ways",
  load: 3,
  oneWayM: 0.3,
  at: { on: wall, leftMm: 450, topMm: 1_000 },
});

// placement/compartment-heat: 33 W of an inverter at full load, behind 0.4 m² of plastic.
const locker = compartment({
  name: "inverter locker",
  walls: [{ material: "plastic", areaM2: 0.4 }],
  outsideC: 35,
});
const lockerWall = surface({
  name: "wall of the locker",
  size: { widthMm: 500, heightMm: 400 },
  compartment: locker,
});
channel({
  name: "duct to the locker",
  from: { on: wall, leftMm: 500, topMm: 800 },
  to: { on: lockerWall, leftMm: 10, topMm: 200 },
  lengthM: 0.3,
});
const ac = inverter({
  name: "inverter, ways",
  continuousW: 300,
  efficiencyPercent: 90,
  at: { on: lockerWall, leftMm: 200, topMm: 200 },
});
cable({
  name: "inverter cable, ways",
  from: plus.stud,
  to: ac.positive,
  lengthM: 0.8,
  gauge: 6,
  protect: { ...classT, ratingA: 60 },
});
cable({ name: "inverter return, ways", from: minus.stud, to: ac.negative, lengthM: 0.8, gauge: 6 });

// placement/kinder-than-way: 20 °C are stated, and the channel behind the stove has 45 °C.
const warm = channel({
  name: "channel behind the stove",
  on: wall,
  path: [
    { leftMm: 400, topMm: 750 },
    { leftMm: 1_200, topMm: 750 },
  ],
  ambientC: 45,
  inside: { widthMm: 20, heightMm: 20 },
  fillPercent: 60,
});
// placement/over-channel: 5 mm of the fan are over that channel.
circuit({
  ...fromBus,
  name: "cooker fan, ways",
  load: 2,
  oneWayM: 1.2,
  ambientC: 20,
  outsideMm: 5,
  through: [warm],
  size: { widthMm: 60, heightMm: 60 },
  at: { on: wall, leftMm: 1_150, topMm: 755 },
});
