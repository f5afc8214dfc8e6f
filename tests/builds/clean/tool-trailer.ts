import { battery, build, busBar, cable, circuit, disconnect, shoreCharger } from "loomwright";

// A joiner's trailer: 12 V, one AGM battery, lamps and a vacuum cleaner, charged in the yard overnight.
build({ name: "tool trailer", voltage: 12, insulationC: 90 });

const bank = battery({
  name: "bank",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 30,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 100 });
const plusBus = busBar({ name: "plus bus", side: "positive", ratedA: 100, studs: 6 });
const minusBus = busBar({ name: "minus bus", side: "negative", ratedA: 100, studs: 6 });

cable({
  name: "bank to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 4,
  protect: { ratingA: 80, family: "UL 248-15 Class T", distanceIn: 6, interruptingA: 20_000, ratedV: 125 },
});
cable({ name: "switch to bus", from: mainSwitch.load, to: plusBus.stud, lengthFt: 1, gauge: 4 });
cable({ name: "minus cable", from: bank.negative, to: minusBus.stud, lengthFt: 2, gauge: 4 });

const fromBus = { from: plusBus.stud, returnTo: minusBus.stud } as const;
const breakerOf = (ratingA: number) =>
  ({ ratingA, family: "circuit breaker", interruptingA: 3000, ratedV: 48, distanceIn: 4 }) as const;
circuit({
  ...fromBus,
  name: "vacuum cleaner",
  load: 25,
  continuous: false,
  oneWayFt: 9,
  gauge: 8,
  protect: breakerOf(40),
});
circuit({ ...fromBus, name: "work lamps", load: 5, oneWayFt: 13, gauge: 12, protect: breakerOf(10) });
circuit({ ...fromBus, name: "drill chargers", load: 12, oneWayFt: 6, gauge: 12, protect: breakerOf(20) });

const yard = shoreCharger({ name: "yard charger", outputA: 20 });
cable({
  name: "charger plus",
  from: yard.positive,
  to: plusBus.stud,
  lengthFt: 4,
  gauge: 10,
  protectFarEnd: breakerOf(30),
});
cable({ name: "charger minus", from: yard.negative, to: minusBus.stud, lengthFt: 4, gauge: 10 });
