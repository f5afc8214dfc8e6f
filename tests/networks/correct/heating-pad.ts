import { battery, build, cable, circuit, disconnect, load } from "loomwright";

build({ insulationC: 105 });
const bank = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 4 });
const off = disconnect({ ratedA: 80 });
cable({
  name: "bank to disconnect",
  from: bank.positive,
  to: off.line,
  lengthFt: 2,
  gauge: 6,
  protect: { ratingA: 60, family: "UL 248-15 Class T", distanceIn: 6, interruptingA: 20_000 },
});
const pad = load({ name: "tank pad", resistanceOhm: 1.2 });
circuit({
  name: "tank pad supply",
  from: off.load,
  returnTo: bank.negative,
  to: pad,
  oneWayFt: 9,
  gauge: 10,
  protect: { ratingA: 15, family: "UL 248-15 Class T", distanceIn: 4, interruptingA: 20_000 },
});
