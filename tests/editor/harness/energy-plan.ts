/** A hut with two kinds of sources, and levers of every kind that can and cannot be moved. */
export const energyPlan = `import {
  battery, build, busBar, cable, circuit, period,
  shoreCharger, solarArray, solarController,
} from "loomwright";
build({ name: "hut", insulationC: 105 });
const house = battery({
  name: "house",
  chemistry: "LiFePO4",
  capacityAh: 100,
  reservePercent: 20,
});
const plus = busBar({ side: "positive" });
const minus = busBar({ side: "negative" });
cable({ from: house.positive, to: plus.stud, lengthM: 1, gauge: "1/0", protect: 200 });
cable({ from: house.negative, to: minus.stud, lengthM: 1, gauge: "1/0" });
const on = { from: plus.stud, returnTo: minus.stud, oneWayM: 4, gauge: 12, protect: 15 } as const;
circuit({
  ...on,
  name: "fridge",
  loadW: 50,
  use: { dutyPercent: 40 },
});
circuit({ ...on, name: "lights", loadW: 30, use: { hoursPerDay: 4, when: "dark" } });
const roof = solarArray({
  name: "roof",
  openCircuitV: 45,
  shortCircuitA: 6,
  maxPowerV: 37,
  maxPowerA: 5.4,
});
const mppt = solarController({ maxInputV: 100, outputA: 30 });
cable({ from: roof.positive, to: mppt.solarPositive, lengthM: 5, gauge: 10 });
cable({ from: roof.negative, to: mppt.solarNegative, lengthM: 5, gauge: 10 });
cable({ from: mppt.positive, to: plus.stud, lengthM: 1, gauge: 6, protectFarEnd: 40 });
cable({ from: mppt.negative, to: minus.stud, lengthM: 1, gauge: 6 });
const quay = shoreCharger({ name: "quay", outputA: 30 });
cable({ from: quay.positive, to: plus.stud, lengthM: 1, gauge: 6, protectFarEnd: 40 });
cable({ from: quay.negative, to: minus.stud, lengthM: 1, gauge: 6 });
const evenings = 10 / 5;
period({ name: "all year", place: "Bergen, NO", shore: { hoursPerDay: evenings, everyDays: 4 } });
`;
