import { battery, build, busBar, cable, circuit, disconnect, fusePanel, inverter } from "loomwright";

// A first draft of a van: everything in 10 AWG, which was on offer.
build({ name: "one size van", voltage: 12, insulationC: 105 });
const bank = battery({ name: "bank", chemistry: "LiFePO4", capacityAh: 200 });
const off = disconnect({ name: "switch", ratedA: 300 });
const plus = busBar({ name: "plus", ratedA: 250 });
const minus = busBar({ name: "minus", ratedA: 250 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 10, protect: 100 });
cable({ name: "to bus", from: off.load, to: plus.stud, lengthFt: 1, gauge: 10 });
cable({ name: "bank minus", from: bank.negative, to: minus.stud, lengthFt: 2, gauge: 10 });
const box = inverter({ name: "inverter", continuousW: 1500 });
circuit({
  name: "inverter pair",
  from: plus.stud,
  returnTo: minus.stud,
  to: box,
  oneWayFt: 4,
  gauge: 10,
  protect: 60,
});
const panel = fusePanel({ name: "panel", positions: 6 });
circuit({ name: "panel pair", from: plus.stud, returnTo: minus.stud, to: panel, oneWayFt: 8, gauge: 10 });
circuit({ name: "fridge", from: panel.branch, load: 6, oneWayFt: 12, gauge: 10, protect: 50 });
circuit({ name: "pump", from: panel.branch, load: 7, oneWayFt: 10, gauge: 10, protect: 5 });
circuit({ name: "lamps", from: panel.branch, load: 3, oneWayFt: 20, gauge: 10, protect: 10 });
