import { battery, breaker, build, cable, circuit, disconnect, motor } from "loomwright";

// A dinghy with an outboard behind a breaker.
build({ name: "dinghy breaker", voltage: 12, insulationC: 105, installedIn: "boat" });
const bank = battery({
  name: "battery",
  chemistry: "LiFePO4",
  capacityAh: 100,
  internalMilliohm: 8,
  maxDischargeA: 100,
  maxChargeA: 50,
});
const main = breaker({
  name: "main breaker",
  ratingA: 60,
  interruptingA: 5_000,
  ratedV: 48,
  on: bank.positive,
  terminalC: 75,
});
const off = disconnect({ name: "kill switch", ratedA: 100 });
const drive = motor({ name: "outboard", runningA: 45, startingA: 60 });
cable({ name: "plus", from: main.load, to: off.line, lengthFt: 2, gauge: 6 });
circuit({
  name: "outboard cable",
  from: off.load,
  returnTo: bank.negative,
  to: drive,
  oneWayFt: 8,
  gauge: 6,
});
