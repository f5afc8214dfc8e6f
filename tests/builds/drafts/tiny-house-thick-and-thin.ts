import {
  battery,
  build,
  busBar,
  cable,
  circuit,
  disconnect,
  fusePanel,
  inverter,
  shoreCharger,
} from "loomwright";

// A first draft of a tiny house: welding cable for the lamps, bell wire for the panel.
build({ name: "thick and thin", voltage: 24, insulationC: 105, installedIn: "building" });
const bank = battery({ name: "bank", chemistry: "LiFePO4", nominalV: 24, capacityAh: 200, maxChargeA: 100 });
const off = disconnect({ name: "switch", ratedA: 150 });
const plus = busBar({ name: "plus" });
const minus = busBar({ name: "minus" });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 3, gauge: 4, protect: 250 });
cable({ name: "to bus", from: off.load, to: plus.stud, lengthFt: 1, gauge: 4 });
cable({ name: "bank minus", from: bank.negative, to: minus.stud, lengthFt: 3, gauge: 4 });
const box = inverter({ name: "inverter", continuousW: 2000, cutOffV: 22 });
circuit({
  name: "inverter pair",
  from: plus.stud,
  returnTo: minus.stud,
  to: box,
  oneWayFt: 5,
  gauge: 6,
  protect: 150,
});
const charger = shoreCharger({ name: "charger", outputA: 40, outputV: 28.4 });
cable({ name: "charger plus", from: charger.positive, to: plus.stud, lengthFt: 5, gauge: 10 });
cable({ name: "charger minus", from: charger.negative, to: minus.stud, lengthFt: 5, gauge: 10 });
const panel = fusePanel({ name: "panel", positions: 6, ratedA: 60, branchRatedA: 20 });
circuit({
  name: "panel pair",
  from: plus.stud,
  returnTo: minus.stud,
  to: panel,
  oneWayFt: 12,
  gauge: 14,
  protect: 60,
});
circuit({ name: "lamps", from: panel.branch, load: 3, oneWayFt: 15, gauge: 4, protect: 20 });
circuit({ name: "fan", from: panel.branch, load: 2, oneWayFt: 12, gauge: 18, protect: 10 });
circuit({ name: "pump", from: panel.branch, load: 9, oneWayFt: 14, gauge: 14, protect: 15 });
