import { battery, build, busBar, cable, circuit, disconnect, motor } from "loomwright";

// A first draft of a small cruiser: windlass and lamps on one pair of cables to the bow.
build({ name: "one feed to the bow", voltage: 12, insulationC: 105, installedIn: "boat" });
const bank = battery({ name: "bank", chemistry: "flooded lead-acid", capacityAh: 110 });
const off = disconnect({ name: "switch", ratedA: 150 });
const plus = busBar({ name: "bow plus" });
const minus = busBar({ name: "bow minus" });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 3, gauge: 4, protect: 150 });
cable({ name: "bow feed", from: off.load, to: plus.stud, lengthFt: 18, gauge: 6 });
cable({ name: "bow return", from: minus.stud, to: bank.negative, lengthFt: 20, gauge: 6 });
circuit({
  name: "windlass wires",
  from: plus.stud,
  returnTo: minus.stud,
  to: motor({ name: "windlass", runningA: 70, startingA: 120, continuous: false }),
  oneWayFt: 2,
  gauge: 6,
});
circuit({ name: "bow lamps", from: plus.stud, returnTo: minus.stud, load: 3, oneWayFt: 6, gauge: 18 });
