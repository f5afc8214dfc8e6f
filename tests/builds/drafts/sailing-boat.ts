import { battery, build, busBar, cable, circuit, disconnect, fusePanel, motor } from "loomwright";

// A sailing boat of 30 feet: mast wiring of two-core lamp cable, an autopilot at the stern.
build({ name: "sailing boat", voltage: 12, insulationC: 105, installedIn: "boat" });

const house = battery({ name: "house", chemistry: "AGM", capacityAh: 180, internalMilliohm: 4 });
const isolator = disconnect({ name: "isolator", ratedA: 300 });
const negative = busBar({ name: "negative bus", side: "negative" });
const panel = fusePanel({ name: "panel", positions: 12, negativeBus: false });
cable({
  name: "battery to isolator",
  from: house.positive,
  to: isolator.line,
  lengthFt: 4,
  gauge: 4,
  protect: 150,
});
cable({ name: "isolator to panel", from: isolator.load, to: panel.feed, lengthFt: 12, gauge: 8 });
cable({ name: "negative cable", from: negative.stud, to: house.negative, lengthFt: 14, gauge: 8 });
const to = negative.stud;
circuit({
  name: "tricolour",
  from: panel.branch,
  returnTo: to,
  load: 2.1,
  oneWayFt: 62,
  gauge: 18,
  protect: 5,
  critical: true,
});
circuit({
  name: "steaming light",
  from: panel.branch,
  returnTo: to,
  load: 1.8,
  oneWayFt: 40,
  gauge: 18,
  protect: 5,
  critical: true,
});
circuit({
  name: "stern light",
  from: panel.branch,
  returnTo: to,
  load: 0.8,
  oneWayFt: 28,
  gauge: 18,
  protect: 5,
  critical: true,
});
const pilot = motor({ name: "autopilot", runningA: 8, startingA: 25, startingS: 1, critical: true });
circuit({
  name: "pilot wires",
  from: panel.branch,
  returnTo: to,
  to: pilot,
  oneWayFt: 26,
  gauge: 14,
  protect: 10,
});
circuit({
  name: "VHF",
  from: panel.branch,
  returnTo: to,
  load: 6,
  oneWayFt: 9,
  gauge: 14,
  protect: 10,
  critical: true,
});
circuit({
  name: "cabin lights",
  from: panel.branch,
  returnTo: to,
  load: 4,
  oneWayFt: 22,
  gauge: 16,
  protect: 15,
});
circuit({
  name: "fridge",
  from: panel.branch,
  returnTo: to,
  load: 5.5,
  oneWayFt: 12,
  gauge: 14,
  protect: 15,
});
