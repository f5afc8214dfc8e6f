import {
  battery,
  breaker,
  build,
  busBar,
  cable,
  circuit,
  disconnect,
  solarArray,
  solarController,
} from "loomwright";

// A three-wheeled camper: one small lithium battery, two breakers in place of fuses, one module as a roof.
build({ name: "tuk-tuk", voltage: 12, insulationC: 105, installedIn: "vehicle" });

const bank = battery({
  name: "battery",
  chemistry: "LiFePO4",
  capacityAh: 50,
  internalMilliohm: 14,
  maxDischargeA: 50,
  maxChargeA: 25,
});
const off = disconnect({ name: "key switch", ratedA: 60 });
const plus = busBar({ name: "plus bar", side: "positive", ratedA: 100, studs: 4 });
const minus = busBar({ name: "minus bar", side: "negative", ratedA: 100, studs: 5 });
cable({
  name: "battery plus",
  from: bank.positive,
  to: off.line,
  lengthFt: 1,
  gauge: 8,
  protect: { ratingA: 40, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 },
});
cable({ name: "switched plus", from: off.load, to: plus.stud, lengthFt: 1, gauge: 8 });
cable({ name: "battery minus", from: bank.negative, to: minus.stud, lengthFt: 1, gauge: 8 });

const marked = { interruptingA: 3_000, ratedV: 48, terminalC: 75 } as const;
const lampBreaker = breaker({ name: "lamp breaker", ratingA: 10, ...marked, on: plus.stud });
const boxBreaker = breaker({ name: "cool box breaker", ratingA: 10, ...marked, on: plus.stud });
circuit({ name: "lamps", from: lampBreaker.load, returnTo: minus.stud, load: 3, oneWayFt: 9, gauge: 14 });
circuit({ name: "cool box", from: boxBreaker.load, returnTo: minus.stud, load: 5, oneWayFt: 6, gauge: 14 });

const roof = solarArray({
  name: "roof",
  openCircuitV: 21.8,
  shortCircuitA: 6.1,
  maxPowerV: 18.1,
  maxPowerA: 5.6,
});
const charge = solarController({ name: "controller", maxInputV: 50, outputA: 10, outputV: 14.2 });
circuit({
  name: "roof pair",
  from: roof.positive,
  returnTo: roof.negative,
  to: charge,
  oneWayFt: 6,
  gauge: 12,
});
cable({
  name: "charge plus",
  from: charge.positive,
  to: plus.stud,
  lengthFt: 2,
  gauge: 12,
  protectFarEnd: {
    ratingA: 15,
    family: "UL 248-15 Class T",
    interruptingA: 20_000,
    ratedV: 125,
    distanceIn: 4,
  },
});
cable({ name: "charge minus", from: charge.negative, to: minus.stud, lengthFt: 2, gauge: 12 });
