import { battery, build, busBar, cable, circuit, disconnect, load } from "loomwright";

// A patrol boat: two bus bars without a side, and the radio's wires are swapped.
// Expected: error network/unconnected at radio or radio plus or radio minus
// Because: Nameplate; 46 CFR 183 and ISO 10133 require polarity to be kept: the radio's plus leads to the minus bus.
build({ name: "reversed radio", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 40,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 150 });
cable({
  name: "battery to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 2,
  protect: { ...classT, ratingA: 125, distanceIn: 6 },
});
const upperBus = busBar({ name: "upper bus", ratedA: 100 });
const lowerBus = busBar({ name: "lower bus", ratedA: 100 });
cable({ name: "switch to upper bus", from: mainSwitch.load, to: upperBus.stud, lengthFt: 1, gauge: 2 });
cable({ name: "battery to lower bus", from: bank.negative, to: lowerBus.stud, lengthFt: 2, gauge: 2 });
const radio = load({ name: "radio", currentA: 4 });
cable({
  name: "radio minus",
  from: upperBus.stud,
  to: radio.negative,
  lengthFt: 6,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
cable({ name: "radio plus", from: lowerBus.stud, to: radio.positive, lengthFt: 6, gauge: 14 });
circuit({
  name: "lamps",
  from: upperBus.stud,
  returnTo: lowerBus.stud,
  load: 3,
  oneWayFt: 8,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
