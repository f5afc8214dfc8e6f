/** Two surfaces, parts of which some can be moved and others cannot, and one that hangs nowhere yet. */
export const boardsPlan = `import { battery, build, busBar, cable, channel, circuit, surface } from "loomwright";
build({ name: "cabin", insulationC: 105 });
const board = surface({ name: "Main board", size: { widthMm: 1_200, heightMm: 800 } });
const side = surface({ name: "Side wall", size: { widthMm: 600, heightMm: 800 } });
channel({ on: board, path: [{ leftMm: 0, topMm: 500 }, { leftMm: 1_200, topMm: 500 }] });
const house = battery({
  name: "house",
  chemistry: "LiFePO4",
  capacityAh: 100,
  size: { widthMm: 330, heightMm: 220 },
  at: { on: board, leftMm: 60, topMm: 560 },
});
const plus = busBar({
  name: "plus",
  side: "positive",
  size: { widthMm: 120, heightMm: 40 },
  at: { on: board, leftMm: 600, topMm: 300 },
});
const gap = 2 * 100;
const minus = busBar({
  name: "minus",
  side: "negative",
  size: { widthMm: 120, heightMm: 40 },
  at: { on: board, leftMm: 600 + gap, topMm: 300 },
});
cable({ from: house.positive, to: plus.stud, lengthM: 1.5, gauge: "1/0", protect: 200 });
cable({ from: house.negative, to: minus.stud, lengthM: 1.5, gauge: "1/0" });
circuit({
  name: "Fridge",
  from: plus.stud,
  returnTo: minus.stud,
  loadW: 60,
  oneWayM: 4,
  gauge: 12,
  protect: 15,
  size: { widthMm: 100, heightMm: 60 },
});
`;
