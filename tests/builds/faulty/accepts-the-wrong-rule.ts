import { battery, build, cable, circuit, disconnect } from "loomwright";

// A punt: its builder accepts a finding that this circuit does not have.
// Expected: info plan/needless-accept at lamps
// Because: No clause: an accepted finding that is not found was mended, or is a slip that will hide the next one.
build({ name: "accepts the wrong rule", voltage: 12, insulationC: 105 });

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
  name: "lamps",
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  accept: { "protection/missing": "the main fuse protects it" },
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
