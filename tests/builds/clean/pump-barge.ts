import { battery, build, cable, circuit, disconnect, motor } from "loomwright";

// A pump barge: one flooded battery and motors that need much to start, on strip and blade fuses as large as the wire permits.
build({ name: "pump barge", voltage: 12, insulationC: 105 });

const bank = battery({
  name: "battery",
  chemistry: "flooded lead-acid",
  capacityAh: 75,
  shortCircuitA: 950,
  maxDischargeA: 300,
});
const mainSwitch = disconnect({ name: "battery switch", ratedA: 200 });
// 6 AWG may carry 120 A.
cable({
  name: "battery to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 6,
  protect: { ratingA: 100, family: "ISO 8820-5 Type SF 30", distanceIn: 6 },
});
const fromSwitch = { from: mainSwitch.load, returnTo: bank.negative } as const;
// 10 AWG may carry 60 A.
const mud = motor({ name: "mud pump", runningA: 40, startingA: 110, continuous: false });
circuit({
  ...fromSwitch,
  name: "mud pump cable",
  to: mud,
  oneWayFt: 6,
  gauge: 10,
  protect: { ratingA: 60, family: "ISO 8820-5 Type SF 30", distanceIn: 5 },
});
// 12 AWG may carry 45 A.
const deck = motor({ name: "deck pump", runningA: 26, startingA: 70, continuous: false });
circuit({
  ...fromSwitch,
  name: "deck pump cable",
  to: deck,
  oneWayFt: 5,
  gauge: 12,
  protect: { ratingA: 40, family: "ISO 8820-3 Type E", distanceIn: 5 },
});
