import { battery, build, cable, circuit, disconnect, shoreCharger } from "loomwright";

// A charger whose cables are thinner than its output.
build({ name: "dock", voltage: 12, insulationC: 105 });

const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 200,
  internalMilliohm: 3,
  maxChargeA: 60,
});
const mainSwitch = disconnect({ name: "switch", ratedA: 100 });
cable({
  name: "plus",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 6,
  protect: { ratingA: 100, family: "UL 248-15 Class T", interruptingA: 20_000 },
});
const mains = shoreCharger({ name: "charger", outputA: 50 });
cable({ name: "charger plus", from: mains.positive, to: mainSwitch.load, lengthFt: 9, gauge: 12 });
cable({ name: "charger minus", from: mains.negative, to: bank.negative, lengthFt: 9, gauge: 12 });
circuit({
  name: "lamps",
  from: mainSwitch.load,
  returnTo: bank.negative,
  load: 5,
  oneWayFt: 15,
  gauge: 16,
  protect: { ratingA: 10, family: "UL 248-15 Class T", interruptingA: 20_000 },
});
