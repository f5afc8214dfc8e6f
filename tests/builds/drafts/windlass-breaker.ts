import { battery, breaker, build, busBar, cable, circuit, disconnect, fusePanel, motor } from "loomwright";

// Metric sailing boat, 12 V: breakers for everything, all 50 A from one box.
build({ name: "metric sailing boat", voltage: 12, insulationC: 85, installedIn: "boat" });

const bank = battery({ name: "bank", chemistry: "flooded lead-acid", capacityAh: 220 });
const off = disconnect({ name: "switch", ratedA: 200 });
cable({ name: "bank to switch", from: bank.positive, to: off.line, lengthM: 1.5, mm2: 35, protect: 150 });
const plus = busBar({ name: "plus", ratedA: 200 });
const minus = busBar({ name: "minus", side: "negative", ratedA: 200 });
cable({ name: "switch to bus", from: off.load, to: plus.stud, lengthM: 0.5, mm2: 25 });
cable({ name: "bank to minus", from: bank.negative, to: minus.stud, lengthM: 2, mm2: 25 });
const winch = motor({ name: "windlass", runningA: 80, startingA: 250, startingS: 0.5, continuous: false });
const winchBreaker = breaker({ name: "windlass breaker", ratingA: 50, continuous: false });
cable({ name: "bus to breaker", from: plus.stud, to: winchBreaker.line, lengthM: 0.3, mm2: 16 });
cable({ name: "windlass plus", from: winchBreaker.load, to: winch.positive, lengthM: 9, mm2: 16 });
cable({ name: "windlass minus", from: winch.negative, to: minus.stud, lengthM: 9, mm2: 16 });
const panel = fusePanel({ name: "panel", positions: 10, branchRatedA: 20, ratedA: 60 });
const panelBreaker = breaker({ name: "panel breaker", ratingA: 50 });
cable({ name: "bus to panel breaker", from: plus.stud, to: panelBreaker.line, lengthM: 0.3, mm2: 6 });
cable({ name: "panel plus", from: panelBreaker.load, to: panel.feed, lengthM: 3, mm2: 6 });
cable({ name: "panel minus", from: panel.negative, to: minus.stud, lengthM: 3, mm2: 6 });
for (const [name, load, oneWayM] of [
  ["saloon", 3, 5],
  ["navigation", 4, 4],
  ["fridge", 5, 3],
  ["watermaker", 18, 4],
  ["masthead", 2, 22],
] as const)
  circuit({ name, from: panel.branch, load, oneWayM, mm2: 1.5, protect: 20 });
