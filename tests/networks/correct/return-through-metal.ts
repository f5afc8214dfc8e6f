import { battery, build, cable, chassis, disconnect, load } from "loomwright";

build({ insulationC: 105 });
const bank = battery({ chemistry: "AGM", capacityAh: 90, shortCircuitA: 2_000 });
const frame = chassis({ milliohm: 2 });
cable({ name: "bond", from: bank.negative, to: frame.bond, lengthFt: 1, gauge: 4 });
const off = disconnect({ ratedA: 60 });
cable({
  name: "to the disconnect",
  from: bank.positive,
  to: off.line,
  lengthFt: 2,
  gauge: 8,
  protect: { ratingA: 50, family: "UL 248-15 Class T", distanceIn: 6, interruptingA: 20_000 },
});
const beam = load({ name: "work light", currentA: 8 });
cable({
  name: "to the work light",
  from: off.load,
  to: beam.positive,
  lengthFt: 12,
  gauge: 12,
  protect: { ratingA: 10, family: "UL 248-15 Class T", distanceIn: 5, interruptingA: 20_000 },
});
cable({ name: "light to frame", from: beam.negative, to: frame.metal, lengthFt: 1, gauge: 12 });
