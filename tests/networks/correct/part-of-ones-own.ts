import { battery, build, cable, circuit, part } from "loomwright";

build({ insulationC: 105 });
const bank = battery({ chemistry: "AGM", capacityAh: 70, shortCircuitA: 1_600 });
// A selector, for which the library has no function: its common contact feeds one of two outlets.
const selector = part({
  name: "selector",
  terminals: ["common", "first", "second"],
  joins: [{ between: ["common", "first"], milliohm: 0.2 }],
  ratedA: 60,
});
cable({
  name: "battery to selector",
  from: bank.positive,
  to: selector.common,
  lengthFt: 2,
  gauge: 8,
  protect: { ratingA: 50, family: "UL 248-15 Class T", distanceIn: 6, interruptingA: 20_000 },
});
circuit({
  name: "transceiver",
  from: selector.first,
  returnTo: bank.negative,
  load: 18,
  continuous: false,
  oneWayFt: 7,
  gauge: 8,
  protect: { ratingA: 25, family: "UL 248-15 Class T", distanceIn: 5, interruptingA: 20_000 },
});
