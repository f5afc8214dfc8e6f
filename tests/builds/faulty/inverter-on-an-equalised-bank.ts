import { battery, build, busBar, cable, circuit, disconnect, inverter, shoreCharger } from "loomwright";

// A hut: a flooded bank that its charger equalises at 15.5 V, and an inverter for 10.5 to 15 V that stays connected.
// Expected: error part/other-voltage at inverter
// Because: The nameplate of the inverter: its input withstands 15 V, and the charger holds 15.5 V at it for hours.
build({ name: "hut with an equalised bank", voltage: 12, insulationC: 105, installedIn: "building" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "flooded lead-acid",
  capacityAh: 220,
  internalMilliohm: 4,
  maxDischargeA: 200,
  maxChargeA: 40,
});
const off = disconnect({ name: "main switch", ratedA: 200 });
const plus = busBar({ name: "plus bar", side: "positive", ratedA: 200, studs: 6 });
const minus = busBar({ name: "minus bar", side: "negative", ratedA: 200, studs: 6 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 2, protect: classT(125) });
cable({ name: "switched plus", from: off.load, to: plus.stud, lengthFt: 1, gauge: 2 });
cable({ name: "bank minus", from: minus.stud, to: bank.negative, lengthFt: 2, gauge: 2 });
const rails = { from: plus.stud, returnTo: minus.stud } as const;
const mains = shoreCharger({
  name: "charger",
  outputA: 30,
  outputV: 15.5,
  accept: { "battery/charging-voltage": "equalising, once a month, with an eye on the water" },
});
circuit({ ...rails, name: "charger wires", to: mains, oneWayFt: 4, gauge: 8, protect: classT(40) });
const sine = inverter({
  name: "inverter",
  continuousW: 400,
  surgeW: 800,
  cutOffV: 10.5,
  maximumV: 15,
  efficiencyPercent: 90,
});
circuit({ ...rails, name: "inverter wires", to: sine, oneWayFt: 3, gauge: 6, protect: classT(60) });
circuit({ ...rails, name: "lamps", load: 3, maximumV: 16, oneWayFt: 12, gauge: 14, protect: classT(6) });
