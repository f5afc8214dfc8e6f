/** The boards of a camper: equipment behind the bench, batteries on the floor, a lamp on the mast. Its figures are invented. */
export const camperPlan = `
build({ name: "camper behind the bench", voltage: 12 });
const locker = compartment({ name: "locker" });
const board = surface({ name: "Board behind the bench", size: { widthMm: 1200, heightMm: 800 }, compartment: locker,
  keepFree: [{ leftMm: 0, topMm: 620, widthMm: 1200, heightMm: 60, name: "bed frame" }],
  outOfReach: [{ leftMm: 1040, topMm: 680, widthMm: 160, heightMm: 120 }],
  fixtures: [{ fixture: "source of heat", leftMm: 20, topMm: 700, widthMm: 260, heightMm: 60, name: "heater pipe", distanceMm: 75 }] });
const floor = surface({ name: "Locker floor", size: { widthMm: 900, heightMm: 500 }, orientation: "floor", compartment: locker });
const trunking = channel({ name: "Main trunking", on: board, inside: { widthMm: 40, heightMm: 40 },
  path: [{ leftMm: 40, topMm: 390 }, { leftMm: 1160, topMm: 390 }] });
const riser = channel({ name: "Riser", on: board, inside: { widthMm: 40, heightMm: 40 },
  path: [{ leftMm: 760, topMm: 390 }, { leftMm: 760, topMm: 20 }] });
const hole = channel({ name: "Hole to the floor", way: "hole", from: { on: board, leftMm: 500, topMm: 780 }, to: { on: floor, leftMm: 450, topMm: 20 }, lengthM: 0.02 });
const drop = channel({ name: "Bundle down", on: board, path: [{ leftMm: 500, topMm: 390 }, { leftMm: 500, topMm: 780 }] });
const mast = channel({ name: "Mast conduit", way: "conduit", from: { on: board, leftMm: 760, topMm: 20 }, lengthM: 6 });
const bank = battery({ name: "House battery", chemistry: "LiFePO4", capacityAh: 200, size: { widthMm: 350, heightMm: 190, depthMm: 180 },
  at: { on: floor, leftMm: 60, topMm: 120 }, terminalsAt: { positive: { leftMm: 40, topMm: 20, leaves: "up" }, negative: { leftMm: 310, topMm: 20, leaves: "up" } } });
const spare = battery({ name: "Starter battery", chemistry: "AGM", capacityAh: 80, size: { widthMm: 280, heightMm: 180, depthMm: 190 },
  at: { on: floor, leftMm: 560, topMm: 120 }, terminalsAt: { positive: { leftMm: 30, topMm: 20, leaves: "front" }, negative: { leftMm: 250, topMm: 20, leaves: "front" } } });
const positive = busBar({ name: "Positive bar", side: "positive", ratedA: 250, size: { widthMm: 180, heightMm: 45, depthMm: 40 }, at: { on: board, leftMm: 300, topMm: 460 },
  terminalsAt: { stud: [{ leftMm: 20, topMm: 22, leaves: "up" }, { leftMm: 60, topMm: 22, leaves: "up" }, { leftMm: 100, topMm: 22, leaves: "up" }, { leftMm: 140, topMm: 22, leaves: "up" }] } });
const negative = busBar({ name: "Negative bar", side: "negative", ratedA: 250, size: { widthMm: 180, heightMm: 45, depthMm: 40 }, at: { on: board, leftMm: 300, topMm: 550 } });
const mainSwitch = disconnect({ name: "Battery switch", ratedA: 300, size: { widthMm: 70, heightMm: 70, depthMm: 75 }, at: { on: board, leftMm: 540, topMm: 470 } });
const panel = fusePanel({ name: "Fuse panel", positions: 12, ratedA: 100, size: { widthMm: 110, heightMm: 220, depthMm: 45 }, at: { on: board, leftMm: 960, topMm: 80 },
  air: { leftMm: 20, rightMm: 20 } });
const box = inverter({ name: "Inverter 2 kW", continuousW: 2000, size: { widthMm: 320, heightMm: 260, depthMm: 130 }, at: { on: board, leftMm: 90, topMm: 70 },
  air: { leftMm: 60, rightMm: 60, topMm: 60, bottomMm: 40 }, terminalsAt: { positive: { leftMm: 60, topMm: 245, leaves: "down" }, negative: { leftMm: 120, topMm: 245, leaves: "down" } } });
const charger = dcDcCharger({ name: "Charger from the alternator", outputA: 30, size: { widthMm: 120, heightMm: 160, depthMm: 60 }, at: { on: board, leftMm: 540, topMm: 120, turnedDeg: 90 },
  air: { topMm: 50, bottomMm: 50, leftMm: 10, rightMm: 10 } });
const meter = shunt({ name: "Battery meter", ratedA: 300, size: { widthMm: 120, heightMm: 50, depthMm: 40 }, at: { on: board, leftMm: 700, topMm: 560 } });
const lampOnMast = load({ name: "Mast lamp", currentA: 1, at: { endOf: mast, beyondM: 0.3 } });
const pump = load({ name: "Water pump", currentA: 6 });
cable({ name: "Bank to switch", from: bank.positive, to: mainSwitch.line, lengthM: 1.5, mm2: 70, protect: { ratingA: 250, family: "UL 248-15 Class T" } });
cable({ name: "Switch to bar", from: mainSwitch.load, to: positive.stud, lengthM: 0.4, mm2: 70 });
cable({ name: "Bank to meter", from: bank.negative, to: meter.batterySide, lengthM: 1.5, mm2: 70 });
cable({ name: "Meter to bar", from: meter.systemSide, to: negative.stud, lengthM: 0.5, mm2: 70 });
cable({ name: "Inverter feed", from: positive.stud, to: box.positive, lengthM: 1, mm2: 70, protect: { ratingA: 250, family: "UL 248-15 Class T" } });
cable({ name: "Inverter return", from: box.negative, to: negative.stud, lengthM: 1, mm2: 70 });
circuit({ name: "Panel feed", from: positive.stud, returnTo: negative.stud, to: panel, oneWayM: 1.2, mm2: 16, protect: 80 });
circuit({ name: "Mast lamp circuit", from: panel.branch, to: lampOnMast, oneWayM: 7, mm2: 1.5, protect: 3 });
circuit({ name: "Pump circuit", from: panel.branch, to: pump, oneWayM: 3, mm2: 2.5, protect: 10 });
circuit({ name: "Reading lamp", from: panel.branch, load: 1, oneWayM: 3, mm2: 1.5, protect: 3, at: { on: board, leftMm: 1100, topMm: 480 } });
cable({ name: "Charger out", from: charger.outputPositive, to: positive.stud, lengthM: 1, mm2: 16, protectFarEnd: 40 });
cable({ name: "Charger return", from: charger.outputNegative, to: negative.stud, lengthM: 1, mm2: 16 });
`;
