import {
  battery,
  build,
  cable,
  circuit,
  disconnect,
  fusePanel,
  load,
  solarArray,
  solarController,
} from "loomwright";

// A panel van: a television with "12 V, 11 to 14 V" on its nameplate, on lithium that the sun charges at 14.6 V.
// Expected: error part/other-voltage at television
// Because: The nameplate of the television: it withstands 14 V, and the solar controller holds 14.6 V at its terminals whenever the
//   bank is nearly full.
build({ name: "van with a television", voltage: 12, insulationC: 105, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  capacityAh: 100,
  internalMilliohm: 8,
  maxDischargeA: 100,
  maxChargeA: 50,
});
const off = disconnect({ name: "main switch", ratedA: 150 });
const panel = fusePanel({ name: "fuse panel", positions: 8, ratedA: 80, branchRatedA: 30 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 1.5, gauge: 4, protect: classT(80) });
cable({ name: "panel feed", from: off.load, to: panel.feed, lengthFt: 3, gauge: 4 });
cable({ name: "panel return", from: panel.negative, to: bank.negative, lengthFt: 4, gauge: 4 });
const roof = solarArray({
  name: "roof modules",
  openCircuitV: 22.5,
  shortCircuitA: 9,
  maxPowerV: 18.6,
  maxPowerA: 8.5,
  lowestC: -15,
});
const sun = solarController({ name: "solar controller", outputA: 15, maxInputV: 75, outputV: 14.6 });
circuit({
  name: "roof wires",
  from: roof.positive,
  returnTo: roof.negative,
  to: sun,
  oneWayFt: 10,
  gauge: 10,
});
circuit({
  name: "controller wires",
  from: sun.positive,
  returnTo: sun.negative,
  to: bank,
  oneWayFt: 4,
  gauge: 10,
  protectFarEnd: classT(20),
});
const television = load({ name: "television", powerW: 30, minimumV: 11, maximumV: 14 });
circuit({ name: "television wires", from: panel.branch, to: television, oneWayFt: 9, gauge: 14, protect: 5 });
circuit({ name: "lamps", from: panel.branch, load: 2, oneWayFt: 12, gauge: 14, protect: 5 });
