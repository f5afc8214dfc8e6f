import { battery, build, cable, circuit, disconnect, inverter } from "loomwright";

// A kettle on an inverter, for minutes.
build({ name: "inverter for minutes", voltage: 12, insulationC: 105, installedIn: "boat" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 400,
  maxChargeA: 40,
});
const off = disconnect({ name: "battery switch", ratedA: 200 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 2, protect: classT(150) });
const rails = { from: off.load, returnTo: bank.negative } as const;
circuit({ ...rails, name: "lamps", load: 3, oneWayFt: 10, gauge: 14, protect: classT(6) });
const inv = inverter({ name: "kettle inverter", continuousW: 1000, surgeW: 1200, cutOffV: 10.5 });
circuit({
  ...rails,
  name: "inverter pair",
  to: inv,
  continuous: false,
  oneWayFt: 3,
  gauge: 1,
  protect: classT(125),
});
