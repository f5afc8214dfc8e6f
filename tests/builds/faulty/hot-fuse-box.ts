import { battery, build, cable, circuit, disconnect } from "loomwright";

// A solar oven truck: the fuse box is at 60 °C, and the pump's fuse carries 80 % of its rating for hours.
// Expected: warning protection/headroom at pump
// Because: ISO 8820-3 ratings hold at 23 °C; common practice is at most 70 to 80 % continuously, less in a hotter place.
build({ name: "hot fuse box", voltage: 12, insulationC: 105 });

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
circuit({
  ...fromSwitch,
  name: "pump",
  load: 16,
  oneWayFt: 6,
  gauge: 10,
  ambientC: 60,
  protect: { ratingA: 20, family: "ISO 8820-3 Type C", interruptingA: 3000, distanceIn: 5 },
});
circuit({
  ...fromSwitch,
  name: "lamps",
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
