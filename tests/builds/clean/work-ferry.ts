import { battery, build, busBar, cable, circuit, disconnect, motor } from "loomwright";

// A chain ferry for walkers: 24 V from two flooded batteries in series, an electric winch, lamps, a bilge pump.
build({ name: "chain ferry", voltage: 24, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const half = {
  chemistry: "flooded lead-acid",
  nominalV: 12,
  capacityAh: 180,
  internalMilliohm: 4,
  maxDischargeA: 400,
} as const;
const lower = battery({ ...half, name: "lower battery" });
const upper = battery({ ...half, name: "upper battery" });
const batterySwitch = disconnect({ name: "battery switch", ratedA: 250 });
const plusBus = busBar({ name: "plus bus", side: "positive", ratedA: 200, studs: 5 });
const minusBus = busBar({ name: "minus bus", side: "negative", ratedA: 200, studs: 5 });

cable({ name: "series link", from: lower.positive, to: upper.negative, lengthFt: 1, gauge: 1 });
cable({
  name: "battery to switch",
  from: upper.positive,
  to: batterySwitch.line,
  lengthFt: 2,
  gauge: 1,
  protect: { ...classT, ratingA: 175, distanceIn: 6 },
});
cable({ name: "switch to bus", from: batterySwitch.load, to: plusBus.stud, lengthFt: 1, gauge: 1 });
cable({ name: "minus cable", from: lower.negative, to: minusBus.stud, lengthFt: 3, gauge: 1 });

const fromBus = { from: plusBus.stud, returnTo: minusBus.stud } as const;
const winch = motor({ name: "chain winch", runningA: 85, startingA: 220, minimumV: 18 });
circuit({
  ...fromBus,
  name: "winch cable",
  to: winch,
  oneWayFt: 8,
  gauge: 4,
  protect: { ...classT, ratingA: 125, distanceIn: 5 },
});
circuit({
  ...fromBus,
  name: "deck lamps",
  load: 3,
  oneWayFt: 26,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
circuit({
  ...fromBus,
  name: "side lamps",
  load: 1,
  oneWayFt: 18,
  gauge: 14,
  critical: true,
  protect: { ...classT, ratingA: 3, distanceIn: 5 },
});
const bilge = motor({ name: "bilge pump", runningA: 3, startingA: 8, critical: true });
circuit({
  name: "bilge pump cable",
  from: upper.positive,
  returnTo: minusBus.stud,
  to: bilge,
  oneWayFt: 7,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 6 },
});
