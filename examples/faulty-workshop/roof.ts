import { battery, build, cable, circuit, disconnect, solarArray, solarController } from "loomwright";

// Faulty on purpose: three roofs, each of which breaks one rule of solar arrays. Do not build any of this.
build({ name: "roofs", voltage: 12, insulationC: 105, lowestC: -20 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, distanceIn: 6 } as const;
const panel = {
  openCircuitV: 22.5,
  shortCircuitA: 9.8,
  maxPowerV: 18.6,
  maxPowerA: 9.2,
  openCircuitPercentPerC: -0.3,
} as const;

/** A bank with a controller, in order with every rule but for what hangs on the controller's solar side. */
function controllerFor(name: string, maxInputV: number) {
  const bank = battery({ name: `bank, ${name}`, chemistry: "AGM", capacityAh: 300, internalMilliohm: 5 });
  const off = disconnect({ name: `disconnect, ${name}`, ratedA: 100 });
  cable({
    name: `bank cable, ${name}`,
    from: bank.positive,
    to: off.line,
    lengthFt: 2,
    gauge: 4,
    protect: { ...classT, ratingA: 80 },
  });
  const controller = solarController({ name: `controller, ${name}`, maxInputV, outputA: 40 });
  cable({
    name: `controller cable, ${name}`,
    from: controller.positive,
    to: off.load,
    lengthFt: 3,
    gauge: 4,
    protectFarEnd: { ...classT, ratingA: 60 },
  });
  cable({
    name: `controller return, ${name}`,
    from: controller.negative,
    to: bank.negative,
    lengthFt: 3,
    gauge: 4,
  });
  circuit({
    name: `lamp, ${name}`,
    from: off.load,
    returnTo: bank.negative,
    load: 2,
    oneWayFt: 6,
    gauge: 14,
    protect: { ...classT, ratingA: 3 },
  });
  return controller;
}

// solar/cold-voltage: two in series are 45 V on a mild day and over 50 V on the coldest.
const north = solarArray({ ...panel, name: "north roof", series: 2 });
circuit({
  name: "north roof to controller",
  from: north.positive,
  to: controllerFor("north", 50),
  oneWayFt: 6,
  gauge: 10,
});

// solar/conductor: enough for the current on the label, not for the brightest hours.
const east = solarArray({ ...panel, name: "east roof", parallel: 2 });
circuit({
  name: "east roof to controller",
  from: east.positive,
  to: controllerFor("east", 75),
  oneWayFt: 2,
  gauge: 12,
  insulationC: 75,
  continuous: false,
});

// solar/string-protection: two sunlit strings can push more into a shaded third than its maker allows.
const south = solarArray({ ...panel, name: "south roof", parallel: 3, maxSeriesFuseA: 15 });
circuit({
  name: "south roof to controller",
  from: south.positive,
  to: controllerFor("south", 75),
  oneWayFt: 6,
  gauge: 6,
});
