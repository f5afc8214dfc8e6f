import { battery, build, cable, circuit, disconnect, motor, shoreCharger } from "loomwright";

// A skiff with a trolling motor of 24 V: a charger with two outputs, one for each battery.
build({ name: "skiff with two chargers", voltage: 24, insulationC: 105, installedIn: "boat" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const lower = battery({
  name: "lower",
  chemistry: "AGM",
  nominalV: 12,
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 25,
});
const upper = battery({
  name: "upper",
  chemistry: "AGM",
  nominalV: 12,
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 25,
});
cable({ name: "link", from: lower.positive, to: upper.negative, lengthFt: 1, gauge: 4 });
const off = disconnect({ name: "switch", ratedA: 150 });
cable({ name: "bank plus", from: upper.positive, to: off.line, lengthFt: 2, gauge: 4, protect: classT(80) });
circuit({
  name: "trolling motor",
  from: off.load,
  returnTo: lower.negative,
  to: motor({ name: "bow motor", runningA: 45, startingA: 60 }),
  oneWayFt: 6,
  gauge: 4,
});
for (const [name, pack] of [
  ["lower", lower],
  ["upper", upper],
] as const) {
  const charger = shoreCharger({ name: `${name} charger`, outputA: 10, outputV: 14.4 });
  cable({
    name: `${name} charger plus`,
    from: charger.positive,
    to: pack.positive,
    lengthFt: 3,
    gauge: 10,
    protectFarEnd: classT(20),
  });
  cable({
    name: `${name} charger minus`,
    from: charger.negative,
    to: pack.negative,
    lengthFt: 3,
    gauge: 10,
    // The middle of the bank is no minus: the lower battery feeds a short there.
    ...(name === "upper" && { protectFarEnd: classT(20) }),
  });
}
