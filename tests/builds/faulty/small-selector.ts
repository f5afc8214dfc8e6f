import { battery, build, cable, circuit, motor, selectorSwitch } from "loomwright";

// A fishing boat: a 50 A battery selector in front of a 90 A pot hauler.
// Expected: error disconnect/rating at battery selector
// Because: Nameplate: 90 A through contacts rated 50 A.
build({ name: "small selector", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const like = { chemistry: "AGM", capacityAh: 100, internalMilliohm: 5, maxDischargeA: 300 } as const;
const first = battery({ ...like, name: "first battery" });
const second = battery({ ...like, name: "second battery" });
const selector = selectorSwitch({ name: "battery selector", ratedA: 50 });
cable({
  name: "first to selector",
  from: first.positive,
  to: selector.input1,
  lengthFt: 3,
  gauge: 2,
  protect: { ...classT, ratingA: 125, distanceIn: 6 },
});
cable({
  name: "second to selector",
  from: second.positive,
  to: selector.input2,
  lengthFt: 3,
  gauge: 2,
  protect: { ...classT, ratingA: 125, distanceIn: 6 },
});
cable({ name: "minus between them", from: second.negative, to: first.negative, lengthFt: 1, gauge: 2 });
const hauler = motor({ name: "pot hauler", runningA: 90, startingA: 130, continuous: false });
circuit({
  name: "hauler cable",
  from: selector.common,
  returnTo: first.negative,
  to: hauler,
  oneWayFt: 6,
  gauge: 2,
  protect: { ...classT, ratingA: 125, distanceIn: 5 },
});
