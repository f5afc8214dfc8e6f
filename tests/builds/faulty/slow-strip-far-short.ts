import { battery, build, cable, circuit, disconnect } from "loomwright";

// A drainage pump: the far short heats the wire more than the near one, because the strip fuse waits.
// Expected: info conductor/fault-withstand at drain pump
// Because: IEC 60364-4-43, 434.5.2: some 310 A are above 350 % of 60 A, for up to 5 s: 480,000 A²s; 10 AWG withstands some 212,000 to 280,000 A²s. The gates of ISO 8820-5 are recalled, so it is information.
build({ name: "slow strip far short", voltage: 12, insulationC: 105 });

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
  name: "drain pump",
  load: 30,
  continuous: false,
  oneWayFt: 13,
  gauge: 10,
  protect: { ratingA: 60, family: "ISO 8820-5 Type SF 30", interruptingA: 5000, distanceIn: 5 },
});
circuit({
  ...fromSwitch,
  name: "lamps",
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
