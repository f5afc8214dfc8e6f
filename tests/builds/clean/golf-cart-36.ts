import {
  battery,
  build,
  cable,
  circuit,
  dcDcCharger,
  disconnect,
  fusePanel,
  motor,
  relay,
  shoreCharger,
} from "loomwright";

// A golf cart of 36 V: six batteries of 6 V in series; lamps of 12 V on an isolated converter.
build({ name: "park cart", voltage: 36, insulationC: 105, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const of6 = {
  chemistry: "flooded lead-acid",
  nominalV: 6,
  capacityAh: 210,
  internalMilliohm: 2,
  maxDischargeA: 400,
  maxChargeA: 40,
} as const;
const batteries = [1, 2, 3, 4, 5, 6].map((number) => battery({ ...of6, name: `battery ${number}` }));
const [first, last] = [batteries[0]!, batteries[5]!];
for (const [index, one] of batteries.entries()) {
  const next = batteries[index + 1];
  if (next)
    cable({ name: `link ${index + 1}`, from: one.positive, to: next.negative, lengthFt: 0.8, gauge: 2 });
}
const off = disconnect({ name: "key switch", ratedA: 200, momentaryA: 350 });
cable({ name: "bank plus", from: last.positive, to: off.line, lengthFt: 2, gauge: 2, protect: classT(175) });
const contactor = relay({ name: "drive contactor", ratedA: 150, momentaryA: 350 });
const drive = motor({ name: "drive motor", runningA: 90, startingA: 250, startingS: 1, continuous: false });
cable({ name: "to contactor", from: off.load, to: contactor.line, lengthFt: 3, gauge: 2, continuous: false });
cable({
  name: "drive plus",
  from: contactor.load,
  to: drive.positive,
  lengthFt: 4,
  gauge: 2,
  continuous: false,
});
cable({
  name: "drive minus",
  from: drive.negative,
  to: first.negative,
  lengthFt: 5,
  gauge: 2,
  continuous: false,
});
const converter = dcDcCharger({
  name: "converter",
  outputA: 15,
  outputV: 13.2,
  inputMinV: 30,
  isolated: true,
  runs: "always",
});
circuit({
  name: "converter feed",
  from: off.load,
  returnTo: first.negative,
  to: converter,
  oneWayFt: 3,
  gauge: 12,
  protect: classT(10),
});
const panel = fusePanel({ name: "lamp panel", positions: 4, ratedA: 30, branchRatedA: 15 });
cable({ name: "12 V plus", from: converter.outputPositive, to: panel.feed, lengthFt: 2, gauge: 10 });
cable({ name: "12 V minus", from: converter.outputNegative, to: panel.negative, lengthFt: 2, gauge: 10 });
circuit({
  name: "head lamps",
  voltage: 12,
  from: panel.branch,
  load: 6,
  oneWayFt: 8,
  gauge: 12,
  protect: 10,
});
circuit({
  name: "horn",
  voltage: 12,
  from: panel.branch,
  load: 4,
  continuous: false,
  oneWayFt: 8,
  gauge: 14,
  protect: 5,
});
const charger = shoreCharger({ name: "charger", outputA: 20, outputV: 44 });
cable({
  name: "charger plus",
  from: charger.positive,
  to: off.line,
  lengthFt: 3,
  gauge: 10,
  protectFarEnd: classT(30),
});
cable({ name: "charger minus", from: charger.negative, to: first.negative, lengthFt: 3, gauge: 10 });
