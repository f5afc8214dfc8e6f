import { battery, build, cable, circuit, dcDcCharger, disconnect } from "loomwright";

// A first draft of a tow car and trailer: the booster hangs on the lead of the trailer socket.
build({ name: "tow pair", voltage: 12, insulationC: 105, installedIn: "vehicle" });
const tow = battery({ name: "tow battery", chemistry: "AGM", capacityAh: 70 });
const booster = dcDcCharger({ name: "booster", outputA: 25 });
circuit({ name: "tow lead", from: tow.positive, to: booster, oneWayFt: 22, gauge: 12, protect: 30 });
const bank = battery({ name: "trailer bank", chemistry: "LiFePO4", capacityAh: 100 });
cable({ name: "booster plus", from: booster.outputPositive, to: bank.positive, lengthFt: 3, gauge: 12 });
cable({ name: "booster minus", from: booster.outputNegative, to: bank.negative, lengthFt: 3, gauge: 12 });
const off = disconnect({ name: "switch", ratedA: 60 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 12, protect: 40 });
circuit({
  name: "lamps",
  from: off.load,
  returnTo: bank.negative,
  load: 3,
  oneWayFt: 12,
  gauge: 18,
  protect: 10,
});
circuit({
  name: "fridge",
  from: off.load,
  returnTo: bank.negative,
  load: 5,
  oneWayFt: 10,
  gauge: 16,
  protect: 15,
});
circuit({
  name: "pump",
  from: off.load,
  returnTo: bank.negative,
  load: 7,
  oneWayFt: 8,
  gauge: 16,
  protect: 7.5,
});
