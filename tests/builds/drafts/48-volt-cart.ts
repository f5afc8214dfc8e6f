import { battery, build, cable, circuit, disconnect, motor } from "loomwright";

// A cart of 48 V with fuses from the car shop.
build({ name: "cart", voltage: 48, insulationC: 105 });

const pack = battery({
  name: "pack",
  chemistry: "LiFePO4",
  nominalV: 48,
  capacityAh: 50,
  internalMilliohm: 20,
  maxDischargeA: 100,
});
const key = disconnect({ name: "key switch", ratedA: 100 });
cable({
  name: "pack to key",
  from: pack.positive,
  to: key.line,
  lengthFt: 3,
  gauge: 8,
  protect: { ratingA: 80, family: "ISO 8820-5 Type SF 30", distanceIn: 12 },
});
const drive = motor({ name: "drive", runningA: 70, startingA: 120, minimumV: 40 });
circuit({ name: "drive cable", from: key.load, returnTo: pack.negative, to: drive, oneWayFt: 7, gauge: 8 });
circuit({
  name: "horn",
  from: key.load,
  returnTo: pack.negative,
  load: 2,
  oneWayFt: 8,
  gauge: 16,
  protect: { ratingA: 10, family: "ISO 8820-12 Type N" },
});
