import { battery, build, cable, circuit, disconnect, motor } from "loomwright";

// A moored boat: the automatic bilge pump is behind the switch that its owner turns off on leaving.
// Expected: info disconnect/bilge-pump at bilge pump or bilge pump cable
// Because: Common practice, as in 33 CFR 183 and ISO 10133 clause 6 exceptions (recalled): automatic bilge pumps stay on when the boat is left.
build({ name: "bilge pump behind switch", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 40,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 150 });
cable({
  name: "battery to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 2,
  protect: { ...classT, ratingA: 125, distanceIn: 6 },
});
const fromSwitch = { from: mainSwitch.load, returnTo: bank.negative } as const;
const bilge = motor({ name: "bilge pump", runningA: 4, startingA: 9, critical: true });
circuit({
  ...fromSwitch,
  name: "bilge pump cable",
  to: bilge,
  oneWayFt: 8,
  gauge: 12,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
circuit({
  ...fromSwitch,
  name: "lamps",
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
