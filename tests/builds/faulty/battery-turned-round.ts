import { battery, build, cable, circuit, disconnect } from "loomwright";

// A market van: the second battery of two in parallel is connected the wrong way round.
// Expected: error network/shorted at second battery or first battery or link across or link back
// Because: No clause needed: plus to minus on both sides shorts both batteries through the links.
// May follow: error protection/unprotected-path at link across or link back
build({ name: "battery turned round", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const first = battery({
  name: "first battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 40,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 150 });
cable({
  name: "battery to switch",
  from: first.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 2,
  protect: { ...classT, ratingA: 125, distanceIn: 6 },
});
const second = battery({
  name: "second battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 40,
});
cable({
  name: "link across",
  from: first.positive,
  to: second.negative,
  lengthFt: 1,
  gauge: 2,
  protect: { ...classT, ratingA: 125, distanceIn: 6 },
});
cable({ name: "link back", from: first.negative, to: second.positive, lengthFt: 1, gauge: 2 });
circuit({
  name: "lamps",
  from: mainSwitch.load,
  returnTo: first.negative,
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
