import { battery, breaker, build, cable, circuit, disconnect } from "loomwright";

// A threshing machine: the stated times of its breaker end at 600 %, and a short there is 12,000 %.
// Expected: info conductor/fault-withstand at sorter
// Because: IEC 60364-4-43, 434.5.2: all that is known is that it opens within 1 s; a breaker's mechanism does not hold I²t constant as a fuse does. Its maker's time at a short is to be stated.
build({ name: "breaker without short gate", voltage: 12, insulationC: 105 });

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
const fromSwitch = { from: mainSwitch.load, returnTo: bank.negative } as const;
const trip = breaker({
  name: "sorter breaker",
  on: mainSwitch.load,
  ratingA: 20,
  interruptingA: 5000,
  ratedV: 48,
  openingTimes: [
    { atPercent: 200, withinS: 60 },
    { atPercent: 600, withinS: 1 },
  ],
});
circuit({ name: "sorter", from: trip.load, returnTo: bank.negative, load: 12, oneWayFt: 5, gauge: 12 });
circuit({
  ...fromSwitch,
  name: "lamps",
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
