import { battery, build, cable, circuit, dcDcCharger, disconnect, fusePanel, motor } from "loomwright";

// A cart of 48 V from four batteries.
build({ name: "golf cart 48", voltage: 48, insulationC: 105, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const cells = ["1", "2", "3", "4"].map((n) =>
  battery({
    name: `battery ${n}`,
    chemistry: "flooded lead-acid",
    nominalV: 12,
    capacityAh: 150,
    internalMilliohm: 6,
    maxDischargeA: 300,
    maxChargeA: 30,
  }),
);
for (let i = 1; i < 4; i++)
  cable({ name: `link ${i}`, from: cells[i - 1]!.positive, to: cells[i]!.negative, lengthFt: 1, gauge: 2 });
const key = disconnect({ name: "key switch", ratedA: 200 });
cable({ name: "plus", from: cells[3]!.positive, to: key.line, lengthFt: 2, gauge: 2, protect: classT(150) });
const drive = motor({ name: "drive", runningA: 90, startingA: 160 });
circuit({
  name: "drive cable",
  from: key.load,
  returnTo: cells[0]!.negative,
  to: drive,
  oneWayFt: 5,
  gauge: 2,
});
const down = dcDcCharger({
  name: "12 V converter",
  outputA: 20,
  outputV: 13.2,
  inputMinV: 40,
  isolated: true,
  runs: "always",
});
circuit({
  name: "converter feed",
  from: key.load,
  returnTo: cells[0]!.negative,
  to: down,
  oneWayFt: 3,
  gauge: 12,
  protect: classT(15),
});
const panel = fusePanel({ name: "lamp panel", positions: 6, ratedA: 40, branchRatedA: 15 });
cable({ name: "12 V plus", from: down.outputPositive, to: panel.feed, lengthFt: 2, gauge: 8 });
cable({ name: "12 V minus", from: down.outputNegative, to: panel.negative, lengthFt: 2, gauge: 8 });
circuit({ name: "head lamps", from: panel.branch, load: 8, oneWayFt: 8, gauge: 12, protect: 10 });
circuit({
  name: "horn",
  from: panel.branch,
  load: 5,
  continuous: false,
  oneWayFt: 6,
  gauge: 14,
  protect: 7.5,
});
