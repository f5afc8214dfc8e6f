import {
  battery,
  build,
  busBar,
  cable,
  circuit,
  dcDcCharger,
  disconnect,
  fusePanel,
  inverter,
} from "loomwright";

// A first draft of a farm shop: 48 V, car fuses, thin cables.
build({ name: "farm shop", voltage: 48, installedIn: "building" });
const pack = battery({
  name: "pack",
  chemistry: "LiFePO4",
  nominalV: 51.2,
  capacityAh: 100,
  maxDischargeA: 100,
});
const off = disconnect({ name: "switch", ratedA: 100 });
const plus = busBar({ name: "plus" });
const minus = busBar({ name: "minus" });
cable({
  name: "pack plus",
  from: pack.positive,
  to: off.line,
  lengthM: 1,
  mm2: 10,
  protect: { ratingA: 100, family: "ISO 8820-3 Type E" },
});
cable({ name: "to bus", from: off.load, to: plus.stud, lengthM: 0.5, mm2: 10 });
cable({ name: "pack minus", from: pack.negative, to: minus.stud, lengthM: 1, mm2: 10 });
const box = inverter({ name: "inverter", continuousW: 3000, cutOffV: 44 });
circuit({
  name: "inverter pair",
  from: plus.stud,
  returnTo: minus.stud,
  to: box,
  oneWayM: 3,
  mm2: 10,
  protect: 80,
});
const converter = dcDcCharger({
  name: "converter",
  outputA: 20,
  outputV: 13.2,
  isolated: true,
  runs: "always",
});
circuit({
  name: "converter pair",
  from: plus.stud,
  returnTo: minus.stud,
  to: converter,
  oneWayM: 2,
  mm2: 1.5,
  protect: { ratingA: 10, family: "ISO 8820-3 Type C" },
});
const panel = fusePanel({ name: "panel", positions: 6 });
cable({ name: "12 V plus", from: converter.outputPositive, to: panel.feed, lengthM: 4, mm2: 2.5 });
cable({ name: "12 V minus", from: converter.outputNegative, to: panel.negative, lengthM: 4, mm2: 2.5 });
circuit({ name: "shop lamps", voltage: 12, from: panel.branch, load: 6, oneWayM: 10, mm2: 1.5, protect: 15 });
circuit({ name: "till", voltage: 12, from: panel.branch, load: 4, oneWayM: 6, mm2: 0.75, protect: 5 });
