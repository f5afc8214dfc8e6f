import {
  battery,
  build,
  cable,
  circuit,
  fusePanel,
  shoreCharger,
  solarArray,
  solarController,
} from "loomwright";

// Caravan: charger and solar straight onto the battery posts, no fuses at the battery.
build({ name: "caravan", voltage: 12 });

const bank = battery({
  name: "battery",
  chemistry: "LiFePO4",
  capacityAh: 100,
  maxDischargeA: 100,
  maxChargeA: 50,
});
const shore = shoreCharger({ name: "charger", outputA: 40 });
circuit({
  name: "charger leads",
  from: bank.positive,
  returnTo: bank.negative,
  to: shore,
  oneWayFt: 10,
  gauge: 10,
});
const roof = solarArray({
  name: "roof",
  openCircuitV: 22,
  shortCircuitA: 6,
  maxPowerV: 18,
  maxPowerA: 5.5,
  parallel: 2,
});
const sun = solarController({ name: "regulator", maxInputV: 50, outputA: 20 });
circuit({ name: "roof wires", from: roof.positive, to: sun, oneWayFt: 20, gauge: 14 });
cable({ name: "regulator plus", from: sun.positive, to: bank.positive, lengthFt: 6, gauge: 14 });
cable({ name: "regulator minus", from: sun.negative, to: bank.negative, lengthFt: 6, gauge: 14 });
const panel = fusePanel({ name: "panel", positions: 6 });
circuit({
  name: "panel leads",
  from: bank.positive,
  returnTo: bank.negative,
  to: panel,
  oneWayFt: 8,
  gauge: 8,
});
circuit({ name: "lamps", from: panel.branch, load: 3, oneWayFt: 15, gauge: 18 });
circuit({ name: "pump", from: panel.branch, load: 5, oneWayFt: 12, gauge: 16 });
circuit({ name: "heater fan", from: panel.branch, load: 7, oneWayFt: 10, gauge: 16 });
circuit({ name: "television", from: panel.branch, load: 4, oneWayFt: 18, gauge: 18 });
