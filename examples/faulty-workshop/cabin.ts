import {
  battery,
  build,
  busBar,
  cable,
  circuit,
  disconnect,
  period,
  solarArray,
  solarController,
} from "loomwright";

// Faulty on purpose: a cabin whose wiring is in order, and whose bank does not last. Do not build any of this.
build({ name: "cabin", voltage: 12, insulationC: 105 });
// energy/no-reserve: the bank does not say how much charge is kept in it.
const bank = battery({
  name: "bank, cabin",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
});
const off = disconnect({ name: "disconnect, cabin", ratedA: 100 });
const main = busBar({ name: "positive bus, cabin", side: "positive", ratedA: 100 });
const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
cable({
  name: "bank cable, cabin",
  from: bank.positive,
  to: off.line,
  lengthFt: 2,
  gauge: 6,
  protect: { ...classT, ratingA: 60, distanceIn: 6 },
});
cable({ name: "bus cable, cabin", from: off.load, to: main.stud, lengthFt: 2, gauge: 6 });
const fromBus = {
  from: main.stud,
  returnTo: bank.negative,
  oneWayFt: 5,
  gauge: 10,
  protect: { ...classT, ratingA: 10, distanceIn: 4 },
} as const;

// energy/greatest-use: the fridge takes more than the lamp and the radio together.
circuit({ ...fromBus, name: "fridge", load: 5, use: { dutyPercent: 30 } });
circuit({ ...fromBus, name: "lamp", load: 2, use: { hoursPerDay: 3, when: "dark" } });
circuit({ ...fromBus, name: "radio", load: 1, use: { hoursPerDay: 2 } });
// energy/hours-missing: the pump does not say how long it runs.
circuit({ ...fromBus, name: "pump", load: 6 });

// energy/array-limited: a small module of 31 V on a controller that does not track.
const module31V = {
  openCircuitV: 38,
  shortCircuitA: 0.22,
  maxPowerV: 31,
  maxPowerA: 0.2,
  lowestC: -5,
} as const;
const window = solarArray({
  name: "window module, cabin",
  ...module31V,
  accept: { "solar/array-voltage": "broken on its own by the shelter" },
});
const controller = solarController({ name: "controller, cabin", maxInputV: 50, outputA: 5, tracking: false });
circuit({
  name: "window module to controller, cabin",
  from: window.positive,
  to: controller,
  returnTo: window.negative,
  oneWayFt: 4,
  gauge: 12,
});
cable({
  name: "controller to bus, cabin",
  from: controller.positive,
  to: main.stud,
  lengthFt: 2,
  gauge: 12,
  protectFarEnd: { ...classT, ratingA: 10, distanceIn: 4 },
});
cable({
  name: "controller to bank, cabin",
  from: controller.negative,
  to: bank.negative,
  lengthFt: 2,
  gauge: 12,
});
// energy/array-unused: a module without a controller.
solarArray({
  name: "spare module, cabin",
  ...module31V,
  accept: { "network/unconnected": "it waits for its controller" },
});

// energy/runs-short and energy/never-full: no source charges the bank in three weeks of July.
// energy/no-charger: its shore hours have no charger either.
period({
  name: "July",
  place: "Tarifa, ES",
  fromDay: "1 Jul",
  untilDay: "21 Jul",
  shore: { fromHour: 20, untilHour: 6 },
});
// energy/place: several places are called San Fernando.
period({ name: "winter", place: "San Fernando", months: ["Jan"] });
