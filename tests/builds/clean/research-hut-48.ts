import { battery, build, busBar, cable, circuit, dcDcCharger, disconnect, fusePanel } from "loomwright";

// A research hut of 48 V: every fuse is one for the voltage, the large one of the panel's feed to ISO 20934.
build({ name: "research hut", voltage: 48, insulationC: 105, installedIn: "building" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  capacityAh: 100,
  internalMilliohm: 20,
  maxDischargeA: 100,
  maxChargeA: 50,
});
const strip = (ratingA: number) => ({ ratingA, family: "ISO 20934", distanceIn: 5 }) as const;
const blade = (ratingA: number) => ({ ratingA, family: "ISO 8820-3 Type F", ratedV: 58 }) as const;
const off = disconnect({ name: "main switch", ratedA: 125 });
const plus = busBar({ name: "plus bar", side: "positive", ratedA: 150, studs: 6 });
const minus = busBar({ name: "minus bar", side: "negative", ratedA: 150, studs: 6 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 2, protect: classT(110) });
cable({ name: "switched plus", from: off.load, to: plus.stud, lengthFt: 1, gauge: 2 });
cable({ name: "bank minus", from: minus.stud, to: bank.negative, lengthFt: 2, gauge: 2 });
const panel = fusePanel({
  name: "panel",
  positions: 6,
  ratedA: 50,
  branchFamily: "ISO 8820-3 Type F",
  testedBehind: { family: "UL 248-15 Class T", ratingA: 110, interruptingA: 10_000 },
});
cable({
  name: "panel feed",
  from: plus.stud,
  to: panel.feed,
  lengthFt: 3,
  gauge: 8,
  protect: strip(50),
  accept: { "protection/interrupting": "the Class T fuse limits" },
});
cable({ name: "panel minus", from: panel.negative, to: minus.stud, lengthFt: 3, gauge: 8 });
circuit({ name: "router", from: panel.branch, load: 1, oneWayFt: 10, gauge: 14, protect: blade(3) });
circuit({ name: "lamps", from: panel.branch, load: 2, oneWayFt: 16, gauge: 14, protect: blade(5) });
const converter = dcDcCharger({
  name: "converter",
  outputA: 10,
  outputV: 13.2,
  inputMinV: 40,
  runs: "always",
});
circuit({
  name: "converter feed",
  from: panel.branch,
  to: converter,
  oneWayFt: 3,
  gauge: 12,
  protect: blade(7.5),
});
circuit({
  name: "sensors",
  from: converter.outputPositive,
  returnTo: converter.outputNegative,
  load: 6,
  voltage: 12,
  oneWayFt: 6,
  gauge: 12,
  protect: { ratingA: 10, family: "ISO 8820-3 Type F" },
});
