import { battery, build, cable, circuit, dcDcCharger, disconnect, fusePanel } from "loomwright";

// A broadcast van: the minus of an isolated converter was forgotten, so its panel has no way back.
// Expected: error network/no-return at converter or radio or small panel
// Because: A circuit needs a return: the output of an isolated converter has none of its own to the input.
// May follow: error network/no-return at radio or lamps
// May follow: error network/unconnected at radio or lamps or converter
build({ name: "converter floating", voltage: 24, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "battery",
  chemistry: "AGM",
  nominalV: 24,
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 60,
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
const converter = dcDcCharger({
  name: "converter",
  outputA: 20,
  outputV: 13.4,
  inputMinV: 20,
  isolated: true,
  runs: "always",
});
circuit({
  name: "converter feed",
  from: mainSwitch.load,
  returnTo: bank.negative,
  to: converter,
  oneWayFt: 3,
  gauge: 10,
  protect: { ...classT, ratingA: 20, distanceIn: 5 },
});
const small = fusePanel({ name: "small panel", positions: 4, ratedA: 40, branchRatedA: 15 });
cable({ name: "12 V plus", from: converter.outputPositive, to: small.feed, lengthFt: 2, gauge: 8 });
circuit({
  name: "radio",
  from: small.branch,
  load: 4,
  oneWayFt: 6,
  gauge: 14,
  protect: { ...classT, ratingA: 6 },
});
circuit({
  name: "lamps",
  from: small.branch,
  load: 2,
  oneWayFt: 9,
  gauge: 14,
  protect: { ...classT, ratingA: 3 },
});
