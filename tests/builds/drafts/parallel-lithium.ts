import { battery, build, busBar, cable, circuit, disconnect, inverter } from "loomwright";

// Two lithium batteries, one fuse, links of 6 AWG.
build({ name: "studio", voltage: 12, insulationC: 105 });

const plus = busBar({ name: "plus", side: "positive" });
const minus = busBar({ name: "minus", side: "negative" });
for (const side of ["left", "right"]) {
  const cell = battery({
    name: `${side} battery`,
    chemistry: "LiFePO4",
    capacityAh: 100,
    internalMilliohm: 6,
    maxDischargeA: 100,
  });
  cable({ name: `${side} plus`, from: cell.positive, to: plus.stud, lengthFt: 2, gauge: 6 });
  cable({ name: `${side} minus`, from: cell.negative, to: minus.stud, lengthFt: 2, gauge: 6 });
}
const mainSwitch = disconnect({ name: "switch", ratedA: 250 });
cable({ name: "main cable", from: plus.stud, to: mainSwitch.line, lengthFt: 2, gauge: 4, protect: 150 });
const tools = inverter({ name: "inverter", continuousW: 1200 });
circuit({
  name: "inverter cable",
  from: mainSwitch.load,
  returnTo: minus.stud,
  to: tools,
  oneWayFt: 5,
  gauge: 6,
  protect: 120,
});
