import { alternator, battery, build, cable, circuit, disconnect, relay, scenario } from "loomwright";

// A horse lorry: 24 V, the living's battery charged through a contactor that the driver closes, metric cables.
build({ name: "horse lorry", voltage: 24, insulationC: 90 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const lorry = battery({
  name: "lorry battery",
  chemistry: "AGM",
  nominalV: 24,
  capacityAh: 140,
  internalMilliohm: 7,
  maxDischargeA: 900,
  maxChargeA: 80,
});
const living = battery({
  name: "living battery",
  chemistry: "AGM",
  nominalV: 24,
  capacityAh: 100,
  internalMilliohm: 9,
  maxDischargeA: 300,
  maxChargeA: 60,
});
const engine = alternator({ name: "alternator", ratedA: 80 });
cable({
  name: "alternator plus",
  from: engine.positive,
  to: lorry.positive,
  lengthM: 2,
  mm2: 25,
  protectFarEnd: { ...classT, ratingA: 110, distanceMm: 150 },
});
cable({ name: "alternator minus", from: engine.negative, to: lorry.negative, lengthM: 2, mm2: 25 });

const contactor = relay({ name: "charging contactor", ratedA: 100 });
cable({
  name: "lorry to contactor",
  from: lorry.positive,
  to: contactor.line,
  lengthM: 1,
  mm2: 35,
  protect: { ...classT, ratingA: 100, distanceMm: 150 },
});
cable({
  name: "living to contactor",
  from: living.positive,
  to: contactor.load,
  lengthM: 4,
  mm2: 35,
  protect: { ...classT, ratingA: 100, distanceMm: 150 },
});
cable({ name: "minus between them", from: lorry.negative, to: living.negative, lengthM: 5, mm2: 35 });

const livingSwitch = disconnect({ name: "living switch", ratedA: 60 });
cable({
  name: "living to switch",
  from: living.positive,
  to: livingSwitch.line,
  lengthM: 0.5,
  mm2: 10,
  protect: { ...classT, ratingA: 40, distanceMm: 150 },
});
const feed = { from: livingSwitch.load, returnTo: living.negative } as const;
const fridge = circuit({
  ...feed,
  name: "refrigerator",
  load: 4,
  oneWayM: 3,
  mm2: 2.5,
  protect: { ...classT, ratingA: 6, distanceMm: 120 },
});
const lamps = circuit({
  ...feed,
  name: "lamps",
  load: 2,
  oneWayM: 6,
  mm2: 1.5,
  protect: { ...classT, ratingA: 3, distanceMm: 120 },
});
scenario({ name: "on the road", on: [fridge], engine: true });
scenario({ name: "show ground at night", on: [fridge, lamps], chargePercent: 50 });
