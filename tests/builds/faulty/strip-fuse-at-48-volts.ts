import { battery, build, cable, circuit, disconnect, motor } from "loomwright";

// An electric cart: a 32 V strip fuse in a 48 V pack.
// Expected: error protection/voltage-rating at pack to switch
// Because: ISO 8820-5:2015, scope: 32 V, for networks of 12 and 24 V; 33 CFR 183.455(d): the voltage rating is at least that of the circuit.
build({ name: "electric cart", voltage: 48, insulationC: 105 });

const pack = battery({
  name: "pack",
  chemistry: "AGM",
  nominalV: 48,
  capacityAh: 60,
  shortCircuitA: 1800,
  maxDischargeA: 200,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 100 });
cable({
  name: "pack to switch",
  from: pack.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 4,
  protect: { ratingA: 80, family: "ISO 8820-5 Type SF 30", distanceIn: 6 },
});
const drive = motor({ name: "drive", runningA: 40, startingA: 70 });
circuit({
  name: "drive cable",
  from: mainSwitch.load,
  returnTo: pack.negative,
  to: drive,
  oneWayFt: 6,
  gauge: 4,
});
