import {
  alternator,
  battery,
  build,
  busBar,
  cable,
  circuit,
  dcDcCharger,
  disconnect,
  motor,
} from "loomwright";

// A first draft of a cruiser: engine battery, booster, house bank, windlass at the bow.
build({ name: "cruiser", voltage: 12, insulationC: 90, installedIn: "boat" });
const engine = battery({
  name: "engine battery",
  chemistry: "flooded lead-acid",
  capacityAh: 90,
  maxChargeA: 60,
});
const machine = alternator({ name: "alternator", ratedA: 100 });
cable({
  name: "alternator plus",
  from: machine.positive,
  to: engine.positive,
  lengthM: 2,
  mm2: 10,
  engineSpace: true,
});
cable({
  name: "alternator minus",
  from: machine.negative,
  to: engine.negative,
  lengthM: 2,
  mm2: 10,
  engineSpace: true,
});
const house = battery({ name: "house", chemistry: "LiFePO4", capacityAh: 200 });
const booster = dcDcCharger({ name: "booster", outputA: 40 });
circuit({
  name: "booster lead",
  from: engine.positive,
  returnTo: engine.negative,
  to: booster,
  oneWayM: 5,
  mm2: 6,
  protect: 40,
});
cable({
  name: "booster plus",
  from: booster.outputPositive,
  to: house.positive,
  lengthM: 1,
  mm2: 6,
  protect: 50,
});
cable({ name: "booster minus", from: booster.outputNegative, to: house.negative, lengthM: 1, mm2: 6 });
const off = disconnect({ name: "house switch", ratedA: 200 });
const plus = busBar({ name: "plus" });
cable({
  name: "house plus",
  from: house.positive,
  to: off.line,
  lengthM: 1,
  mm2: 16,
  protect: { ratingA: 100, family: "ISO 8820-5 Type SF 30" },
});
cable({ name: "to bus", from: off.load, to: plus.stud, lengthM: 0.5, mm2: 16 });
const windlass = motor({ name: "windlass", runningA: 70, startingA: 180, startingS: 0.5, continuous: false });
circuit({
  name: "windlass pair",
  from: plus.stud,
  returnTo: house.negative,
  to: windlass,
  oneWayM: 9,
  mm2: 16,
  protect: 80,
});
circuit({
  name: "lamps",
  from: plus.stud,
  returnTo: house.negative,
  load: 5,
  oneWayM: 8,
  mm2: 1,
  protect: 10,
});
circuit({
  name: "plotter",
  from: plus.stud,
  returnTo: house.negative,
  load: 3,
  critical: true,
  oneWayM: 7,
  mm2: 1.5,
});
