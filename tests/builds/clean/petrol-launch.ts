import { alternator, battery, build, cable, circuit, disconnect } from "loomwright";

// A petrol launch of the old kind: its generator does not limit itself, so a fuse of 120 % of it is at the machine.
build({ name: "petrol launch", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "battery",
  chemistry: "flooded lead-acid",
  capacityAh: 100,
  shortCircuitA: 1900,
  maxDischargeA: 300,
  maxChargeA: 60,
});
const batterySwitch = disconnect({ name: "battery switch", ratedA: 150 });
cable({
  name: "battery to switch",
  from: bank.positive,
  to: batterySwitch.line,
  lengthFt: 2,
  gauge: 2,
  protect: { ...classT, ratingA: 125, distanceIn: 6 },
});
const engine = alternator({ name: "generator", ratedA: 50, selfLimiting: false });
const atMachine = { ...classT, ratingA: 60, distanceIn: 6 } as const;
cable({
  name: "generator plus",
  from: engine.positive,
  to: batterySwitch.line,
  lengthFt: 6,
  gauge: 4,
  engineSpace: true,
  protect: atMachine,
  protectFarEnd: atMachine,
});
cable({
  name: "generator minus",
  from: engine.negative,
  to: bank.negative,
  lengthFt: 6,
  gauge: 4,
  engineSpace: true,
});
const fromSwitch = { from: batterySwitch.load, returnTo: bank.negative } as const;
circuit({
  ...fromSwitch,
  name: "blower",
  load: 5,
  oneWayFt: 8,
  gauge: 12,
  engineSpace: true,
  critical: true,
  protect: { ...classT, ratingA: 10, distanceIn: 5 },
});
circuit({
  ...fromSwitch,
  name: "side lamps",
  load: 1.5,
  oneWayFt: 14,
  gauge: 14,
  critical: true,
  protect: { ...classT, ratingA: 3, distanceIn: 5 },
});
