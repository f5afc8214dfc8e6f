import { battery, build, busBar, cable, circuit, solarArray, solarController } from "loomwright";

// A camper: the circuit from the bus bar ends at the controller as a whole, which is the side of its modules.
// Expected: error network/wrong-port at controller feed
// Because: No clause needed: modules are connected with one side of a controller, batteries with the other; here the modules charge
//   the bank past it.
// May follow: warning battery/charging-voltage at roof
build({ name: "controller fed at its input", voltage: 12, insulationC: 105, lowestC: -10 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "bank",
  chemistry: "AGM",
  capacityAh: 200,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 50,
});
const plus = busBar({ name: "plus", side: "positive", ratedA: 150, studs: 6 });
const minus = busBar({ name: "minus", side: "negative", ratedA: 150, studs: 6 });
cable({
  name: "bank to plus",
  from: bank.positive,
  to: plus.stud,
  lengthFt: 2,
  gauge: 2,
  protect: { ...classT, ratingA: 125, distanceIn: 6 },
});
cable({ name: "bank to minus", from: bank.negative, to: minus.stud, lengthFt: 2, gauge: 2 });
const roof = solarArray({
  name: "roof",
  openCircuitV: 22.6,
  shortCircuitA: 9.7,
  maxPowerV: 18.9,
  maxPowerA: 9.1,
  lowestC: -10,
});
const controller = solarController({ name: "controller", maxInputV: 75, outputA: 15 });
circuit({
  name: "modules",
  from: roof.positive,
  returnTo: roof.negative,
  to: controller,
  oneWayFt: 15,
  gauge: 10,
});
circuit({
  name: "controller feed",
  from: plus.stud,
  returnTo: minus.stud,
  to: controller,
  oneWayFt: 4,
  gauge: 10,
  protect: { ...classT, ratingA: 20, distanceIn: 5 },
});
