import {
  battery,
  build,
  busBar,
  cable,
  channel,
  circuit,
  disconnect,
  fusePanel,
  load,
  surface,
} from "loomwright";

// Faulty on purpose: a small boat whose equipment hangs in the wrong places. Each fault breaks one rule about places.
build({ name: "board", voltage: 12, insulationC: 105 });

// placement/mass: 25 kg on a wall for 20 kg.
const sternWall = surface({
  name: "stern wall",
  size: { widthMm: 900, heightMm: 700 },
  carriesKg: 20,
  bareMetal: true,
  bilgeWaterMm: 100,
  fixtures: [{ fixture: "fuel tank", leftMm: 50, topMm: 0, widthMm: 200, heightMm: 80 }],
});
const board = surface({
  name: "board behind the seat",
  size: { widthMm: 800, heightMm: 600 },
  keepFree: [{ leftMm: 0, topMm: 500, widthMm: 800, heightMm: 40, name: "bed frame" }],
  outOfReach: [{ leftMm: 340, topMm: 100, widthMm: 60, heightMm: 200 }],
});
const locker = surface({
  name: "locker wall",
  size: { widthMm: 700, heightMm: 500 },
  fixtures: [{ fixture: "compass", leftMm: 500, topMm: 350, widthMm: 100, heightMm: 100, distanceMm: 160 }],
});

channel({
  name: "conduit to the board",
  way: "conduit",
  from: { on: sternWall, leftMm: 400, topMm: 500 },
  to: { on: board, leftMm: 150, topMm: 300 },
  lengthM: 0.5,
  accept: { "placement/ways-not-judged": "channels are the subject of ways.ts" },
});
channel({
  name: "conduit to the locker",
  way: "conduit",
  from: { on: board, leftMm: 300, topMm: 300 },
  to: { on: locker, leftMm: 250, topMm: 300 },
  lengthM: 0.5,
});
/** A terminal at the front of its part, where lugs have room. */
const front = { leftMm: 20, topMm: 20, leaves: "front" } as const;

// placement/battery-fuel: under the tank. placement/spill: its acid can run onto the main switch.
const house = battery({
  name: "house",
  chemistry: "flooded lead-acid",
  capacityAh: 100,
  internalMilliohm: 5,
  massKg: 25,
  mountingPositions: ["upright"],
  terminalsAt: { positive: front, negative: front },
  terminalsCovered: true,
  size: { widthMm: 300, heightMm: 200 },
  at: { on: sternWall, leftMm: 100, topMm: 200 },
});
// placement/exposed: live terminals without a cover on bare metal.
const off = disconnect({
  name: "main switch",
  ratedA: 100,
  size: { widthMm: 80, heightMm: 80 },
  at: { on: sternWall, leftMm: 150, topMm: 450 },
  terminalsAt: { line: front, load: front },
});
// placement/bilge-water: it reaches 30 mm into the water.
const minus = busBar({
  name: "stern minus",
  side: "negative",
  ratedA: 100,
  size: { widthMm: 150, heightMm: 40 },
  at: { on: sternWall, leftMm: 500, topMm: 590 },
  terminalsAt: { stud: front },
});

const main = busBar({
  name: "main",
  side: "positive",
  ratedA: 100,
  terminalsCovered: false,
  size: { widthMm: 150, heightMm: 40 },
  at: { on: board, leftMm: 100, topMm: 100 },
  terminalsAt: { stud: front },
});
// placement/overlap: over the positive bus bar. placement/reach: its right edge is out of reach.
const fuses = fusePanel({
  name: "fuses",
  ratedA: 100,
  positions: 6,
  size: { widthMm: 150, heightMm: 80 },
  at: { on: board, leftMm: 200, topMm: 120 },
  terminalsAt: { feed: front },
});
// placement/bus-bars: 60 mm below the positive one. placement/lug-room: its cable has 20 mm up to the fuses.
const boardMinus = busBar({
  name: "board minus",
  side: "negative",
  ratedA: 100,
  terminalsCovered: false,
  size: { widthMm: 150, heightMm: 40 },
  at: { on: board, leftMm: 100, topMm: 200 },
  terminalsAt: { stud: [{ leftMm: 140, topMm: 20, leaves: "up" }] },
});

// placement/position: turned by a quarter. placement/heat: the refrigerator is below it.
const radio = load({
  name: "radio",
  currentA: 2,
  keepCool: true,
  mountingPositions: ["upright"],
  size: { widthMm: 200, heightMm: 80 },
  at: { on: locker, leftMm: 100, topMm: 100, turnedDeg: 90 },
});
// placement/air: 50 mm of 100 mm above it. placement/fixture: 150 mm of 160 mm from the compass.
const fridge = load({
  name: "refrigerator",
  currentA: 5,
  heatW: 40,
  air: { topMm: 100 },
  mountingPositions: ["upright"],
  size: { widthMm: 200, heightMm: 100 },
  at: { on: locker, leftMm: 150, topMm: 350 },
});

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 6 } as const;
cable({
  name: "bank",
  from: house.positive,
  to: off.line,
  gauge: 6,
  protect: { ...classT, ratingA: 60 },
});
cable({ name: "feed", from: off.load, to: main.stud, gauge: 6 });
cable({ name: "feed of the fuses", from: main.stud, to: fuses.feed, gauge: 6 });
cable({
  name: "bank return",
  from: house.negative,
  to: minus.stud,
  gauge: 6,
  accept: { "placement/supports": "supports are the subject of ways.ts" },
});
cable({ name: "board return", from: minus.stud, to: boardMinus.stud, gauge: 6 });

const breaker = { family: "circuit breaker", interruptingA: 5_000, ratedV: 32 } as const;
const branch = { from: fuses.branch, returnTo: boardMinus.stud, gauge: 14 } as const;
circuit({ ...branch, name: "radio supply", to: radio, protect: { ...breaker, ratingA: 5 } });
circuit({ ...branch, name: "refrigerator supply", to: fridge, protect: { ...breaker, ratingA: 10 } });
// placement/outside: 40 mm of it are beyond the edge.
circuit({
  ...branch,
  name: "chart lamp",
  load: 1,
  protect: { ...breaker, ratingA: 5 },
  size: { widthMm: 80, heightMm: 80 },
  at: { on: board, leftMm: 760, topMm: 150 },
});
// placement/kept-free: where the bed frame is.
circuit({
  ...branch,
  name: "reading lamp",
  load: 1,
  protect: { ...breaker, ratingA: 5 },
  size: { widthMm: 60, heightMm: 60 },
  at: { on: board, leftMm: 20, topMm: 450 },
});
