import {
  alternator,
  battery,
  build,
  cable,
  circuit,
  dcDcCharger,
  disconnect,
  inverter,
  solarArray,
  solarController,
} from "loomwright";

// Faulty on purpose, as the yard is: small systems with a machine each. Do not build any of this.
build({ name: "machines", voltage: 12, insulationC: 105, lowestC: -10 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 6 } as const;

/** A bank behind its fuse and its disconnect, in order with every rule. */
function sound(name: string, nominalV = 12) {
  const bank = battery({
    name: `bank, ${name}`,
    chemistry: "AGM",
    nominalV,
    capacityAh: 100,
    internalMilliohm: nominalV / 2,
    maxDischargeA: 300,
    maxChargeA: 40,
  });
  const off = disconnect({ name: `disconnect, ${name}`, ratedA: 150 });
  cable({
    name: `bank cable, ${name}`,
    from: bank.positive,
    to: off.line,
    lengthFt: 2,
    gauge: 2,
    protect: { ...classT, ratingA: 125 },
  });
  return { from: off.load, returnTo: bank.negative };
}

/** Modules of 22.4 V on a controller that charges a sound bank. */
function roof(
  name: string,
  modules: { readonly maxPowerV: number; readonly series: number },
  kind: { readonly outputA: number; readonly tracking: boolean } = { outputA: 30, tracking: true },
) {
  const { from, returnTo } = sound(name);
  const controller = solarController({ name: `controller, ${name}`, maxInputV: 150, ...kind });
  const array = solarArray({
    ...{ name: `modules, ${name}`, openCircuitV: 22.4, shortCircuitA: 6, maxPowerA: 5.6 },
    openCircuitPercentPerC: -0.3,
    ...modules,
  });
  circuit({
    name: `modules to controller, ${name}`,
    from: array.positive,
    to: controller,
    oneWayFt: 12,
    gauge: 10,
  });
  cable({
    name: `controller, positive, ${name}`,
    from: controller.positive,
    to: from,
    lengthFt: 3,
    gauge: 8,
    protectFarEnd: { ...classT, ratingA: 40 },
  });
  cable({
    name: `controller, negative, ${name}`,
    from: controller.negative,
    to: returnTo,
    lengthFt: 4,
    gauge: 8,
  });
}

// solar/array-voltage: 12 V modules of 9 V at maximum power cannot charge with 14.4 V.
roof("shelter", { maxPowerV: 9, series: 1 });

// solar/isolator: three modules give 74 V in the cold, and nothing can switch them off.
roof("hangar", { maxPowerV: 18.6, series: 3 });

// solar/controller-current: a plain controller for 5 A passes on all that modules of 6 A give.
roof("kiosk", { maxPowerV: 18.6, series: 1 }, { outputA: 5, tracking: false });

// alternator/load-dump: the lithium battery is alone on the alternator, and its protection may cut off.
const launch = battery({
  name: "bank, launch",
  chemistry: "LiFePO4",
  capacityAh: 200,
  internalMilliohm: 4,
  maxDischargeA: 200,
  maxChargeA: 100,
});
const engine = alternator({ name: "alternator, launch", ratedA: 70, outputV: 14.2, continuousPercent: 100 });
cable({
  name: "alternator cable, launch",
  from: engine.positive,
  to: launch.positive,
  lengthFt: 4,
  gauge: 4,
  protectFarEnd: { ...classT, ratingA: 100 },
});
cable({
  name: "alternator return, launch",
  from: engine.negative,
  to: launch.negative,
  lengthFt: 4,
  gauge: 4,
});

// inverter/precharge: a large inverter on 48 V, straight behind a switch.
circuit({
  ...sound("foundry", 48),
  name: "inverter supply, foundry",
  to: inverter({ name: "inverter, foundry", continuousW: 3_000, cutOffV: 44 }),
  oneWayFt: 3,
  gauge: 2,
  protect: { ...classT, ratingA: 110 },
});

// inverter/surge: the surge pulls the voltage below the one at which the inverter switches off.
circuit({
  ...sound("pottery"),
  name: "inverter supply, pottery",
  to: inverter({ name: "inverter, pottery", continuousW: 500, surgeW: 2_400, cutOffV: 10.5 }),
  oneWayFt: 3,
  gauge: 2,
  protect: { ...classT, ratingA: 100 },
});

// charger/output-current: the lamps ask the converter for more than it gives.
const down = dcDcCharger({
  name: "converter, gym",
  outputA: 20,
  outputV: 13,
  inputMinV: 20,
  isolated: true,
  runs: "always",
});
circuit({
  ...sound("gym", 24),
  name: "converter input, gym",
  to: down,
  oneWayFt: 3,
  gauge: 8,
  protect: { ...classT, ratingA: 40 },
});
circuit({
  name: "lamps, gym",
  from: down.outputPositive,
  returnTo: down.outputNegative,
  voltage: 12,
  load: 25,
  oneWayFt: 4,
  gauge: 8,
  protect: { ...classT, ratingA: 35 },
});

// inverter/other-voltage: an inverter that switches off at 10.5 V is made for 12 V, and the bank has 24 V.
circuit({
  ...sound("cinema", 24),
  name: "inverter supply, cinema",
  to: inverter({ name: "inverter, cinema", continuousW: 300, cutOffV: 10.5 }),
  oneWayFt: 3,
  gauge: 8,
  protect: { ...classT, ratingA: 50 },
});

// charger/circle: what one converter gives, the other one takes back, day and night.
const cellar = sound("cellar");
const attic = battery({
  name: "bank, attic",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 6,
  maxDischargeA: 300,
  maxChargeA: 40,
});
const always = { outputA: 10, outputV: 14.2, inputMinV: 10.5, isolated: true, runs: "always" } as const;
const up = dcDcCharger({ ...always, name: "converter, up" });
circuit({
  ...cellar,
  name: "input, up",
  to: up,
  oneWayFt: 3,
  gauge: 8,
  protect: { ...classT, ratingA: 25 },
});
circuit({
  name: "output, up",
  from: up.outputPositive,
  returnTo: up.outputNegative,
  to: attic,
  oneWayFt: 3,
  gauge: 8,
  protectFarEnd: { ...classT, ratingA: 20 },
});
const back = dcDcCharger({ ...always, name: "converter, back" });
circuit({
  name: "input, back",
  from: attic.positive,
  to: back,
  oneWayFt: 3,
  gauge: 8,
  protect: { ...classT, ratingA: 25 },
});
cable({
  name: "plus, back",
  from: back.outputPositive,
  to: cellar.from,
  lengthFt: 3,
  gauge: 8,
  protectFarEnd: { ...classT, ratingA: 20 },
});
cable({ name: "minus, back", from: back.outputNegative, to: cellar.returnTo, lengthFt: 3, gauge: 8 });

// charger/wrong-way: with the engine it takes from the house bank, and charges the battery that the alternator charges.
const ferryHouse = sound("ferry");
const ferryEngine = battery({
  name: "engine battery, ferry",
  chemistry: "AGM",
  capacityAh: 80,
  internalMilliohm: 5,
  maxDischargeA: 400,
  maxChargeA: 100,
});
const ferryMachine = alternator({ name: "alternator, ferry", ratedA: 60 });
cable({
  name: "alternator cable, ferry",
  from: ferryMachine.positive,
  to: ferryEngine.positive,
  lengthFt: 4,
  gauge: 4,
  protectFarEnd: { ...classT, ratingA: 80 },
});
cable({
  name: "alternator return, ferry",
  from: ferryMachine.negative,
  to: ferryEngine.negative,
  lengthFt: 4,
  gauge: 4,
});
const booster = dcDcCharger({
  name: "booster, ferry",
  outputA: 10,
  outputV: 14.2,
  inputMinV: 10.5,
  isolated: true,
});
circuit({
  ...ferryHouse,
  name: "booster input, ferry",
  to: booster,
  oneWayFt: 3,
  gauge: 8,
  protect: { ...classT, ratingA: 25 },
});
circuit({
  name: "booster output, ferry",
  from: booster.outputPositive,
  returnTo: booster.outputNegative,
  to: ferryEngine,
  oneWayFt: 3,
  gauge: 8,
  protectFarEnd: { ...classT, ratingA: 25 },
});
