import { battery, build, cable, circuit, disconnect } from "loomwright";

// A lock keeper's boat: the bow lamp is fused at the lamp and not at the bus.
// Expected: warning protection/distance at bow lamp
// Because: 33 CFR 183.455(b): within 7 in of the source of power, 40 in in a sheath; it is 90 in.
build({ name: "branch fuse too far", voltage: 12, insulationC: 105 });

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
  name: "bow lamp",
  load: 2,
  oneWayFt: 12,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 90 },
});
circuit({
  ...fromSwitch,
  name: "lamps",
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
