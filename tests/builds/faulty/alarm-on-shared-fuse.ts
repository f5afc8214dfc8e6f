import { battery, build, cable, circuit, disconnect, fuseHolder } from "loomwright";

// A caravan: the gas alarm shares the fuse of the sockets.
// Expected: info protection/shared-alarm at gas alarm
// Because: Common practice: an alarm has a fuse of its own, or the fault of another device silences it.
build({ name: "alarm on shared fuse", voltage: 12, insulationC: 105 });

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
const sockets = fuseHolder({ name: "socket fuse", ...classT, ratingA: 15, on: mainSwitch.load });
circuit({ name: "sockets", from: sockets.load, returnTo: bank.negative, load: 8, oneWayFt: 6, gauge: 12 });
circuit({
  name: "gas alarm",
  from: sockets.load,
  returnTo: bank.negative,
  load: 0.3,
  critical: true,
  oneWayFt: 7,
  gauge: 14,
});
circuit({
  ...fromSwitch,
  name: "lamps",
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
