import { battery, build, cable, circuit, disconnect, motor, scenario } from "loomwright";

build({ insulationC: 105 });
const bank = battery({ chemistry: "AGM", capacityAh: 200, internalMilliohm: 2.5 });
const off = disconnect({ ratedA: 150 });
cable({
  name: "bank to disconnect",
  from: bank.positive,
  to: off.line,
  lengthFt: 2,
  gauge: 1,
  protect: { ratingA: 125, family: "UL 248-15 Class T", distanceIn: 6, interruptingA: 20_000 },
});
const windlass = motor({ runningA: 70, startingA: 180, minimumV: 9, continuous: false });
circuit({
  name: "windlass supply",
  from: off.load,
  returnTo: bank.negative,
  to: windlass,
  oneWayFt: 12,
  gauge: 1,
});
scenario({ name: "hauling", on: [windlass] });
scenario({ name: "starting, bank low", starting: [windlass], chargePercent: 25 });
