import { battery, build, cable, circuit, disconnect, motor } from "loomwright";

// A tyre fitter's trailer: a compressor on 8 AWG with the largest strip fuse that its wire permits.
build({ name: "compressor trailer", voltage: 12, insulationC: 105 });

const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 75,
  shortCircuitA: 1800,
  maxDischargeA: 300,
});
const mainSwitch = disconnect({ name: "battery switch", ratedA: 200 });
cable({
  name: "battery to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 4,
  protect: { ratingA: 150, family: "ISO 8820-5 Type SF 30", distanceIn: 6 },
});
const compressor = motor({ name: "compressor", runningA: 62, startingA: 180, continuous: false });
circuit({
  name: "compressor cable",
  from: mainSwitch.load,
  returnTo: bank.negative,
  to: compressor,
  oneWayFt: 5,
  gauge: 8,
  protect: { ratingA: 80, family: "ISO 8820-5 Type SF 30", distanceIn: 6 },
});
circuit({
  name: "wheel lamp",
  from: mainSwitch.load,
  returnTo: bank.negative,
  load: 4,
  oneWayFt: 9,
  gauge: 14,
  protect: { ratingA: 30, family: "ISO 8820-5 Type SF 30", distanceIn: 6 },
});
