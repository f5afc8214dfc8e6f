import { battery, build, cable, circuit, dcDcCharger, disconnect } from "loomwright";

// A boat of 12 V with a radio of 24 V.
build({ name: "dual voltage workboat", voltage: 12, insulationC: 105, installedIn: "boat" });
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
const up = dcDcCharger({
  name: "24 V converter",
  outputA: 5,
  outputV: 27,
  inputMinV: 10.5,
  isolated: true,
  runs: "always",
});
circuit({ ...rails, name: "converter feed", to: up, oneWayFt: 3, gauge: 10, protect: classT(30) });
circuit({
  name: "24 V radio",
  from: up.outputPositive,
  returnTo: up.outputNegative,
  load: 3,
  oneWayFt: 6,
  gauge: 14,
  protect: classT(6),
});
