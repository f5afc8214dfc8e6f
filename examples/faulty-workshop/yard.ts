import {
  alternator,
  battery,
  build,
  busBar,
  cable,
  chassis,
  circuit,
  dcDcCharger,
  disconnect,
  type EitherTerminal,
  fuseHolder,
  fusePanel,
  inverter,
  load,
  motor,
  type NegativeTerminal,
  scenario,
  shoreCharger,
  shunt,
  solarController,
} from "loomwright";

// Faulty on purpose: a yard full of small systems that have nothing to do with one another, each of which breaks one rule of
// networks. Do not build any of this. What is wrong stands above each; the fixes are proposed by the checker.
build({ name: "yard", voltage: 12, insulationC: 105 });
scenario({ name: "everything on, chargers too", engine: true, shore: true });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 6 } as const;

/** A bank behind its fuse and its disconnect, in order with every rule. */
function sound(name: string, more: { readonly maxDischargeA?: number; readonly maxChargeA?: number } = {}) {
  const bank = battery({
    name: `bank, ${name}`,
    chemistry: "AGM",
    capacityAh: 100,
    internalMilliohm: 5,
    maxDischargeA: 200,
    ...more,
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
  return { bank, positive: off.load, negative: bank.negative };
}

/** Where a bank feeds what hangs on it. */
interface Feed {
  readonly positive: ReturnType<typeof sound>["positive"];
  readonly negative: NegativeTerminal | EitherTerminal;
}

/** A heater that a sound bank feeds, so that the system has something to do. */
function heater(name: string, at: Feed, amperes = 10) {
  circuit({
    name: `heater, ${name}`,
    from: at.positive,
    returnTo: at.negative,
    load: amperes,
    oneWayFt: 6,
    gauge: 6,
    protect: { ...classT, ratingA: 80 },
  });
}

// protection/unprotected-path: 14 AWG hangs on the disconnect with nothing but the 125 A fuse of the bank before it.
const gate = sound("gate");
circuit({
  name: "gate lamp",
  from: gate.positive,
  returnTo: gate.negative,
  load: 3,
  oneWayFt: 5,
  gauge: 14,
});

// protection/interrupting: a blade fuse close to a bank that delivers more than twice what it can interrupt.
const forge = sound("forge");
circuit({
  name: "forge alarm",
  from: forge.bank.positive,
  returnTo: forge.negative,
  load: 2,
  oneWayFt: 5,
  gauge: 14,
  protect: { ratingA: 5, family: "ISO 8820-3 Type C", distanceIn: 6 },
});
heater("forge", forge);

// disconnect/bilge-pump: whoever switches the dry dock off on leaving stops the pump too.
const dryDock = sound("dry dock");
heater("dry dock", dryDock);
circuit({
  name: "bilge pump, dry dock",
  from: dryDock.positive,
  returnTo: dryDock.negative,
  load: 4,
  oneWayFt: 6,
  gauge: 12,
  protect: { ...classT, ratingA: 6 },
});

// protection/shared-alarm: a fault in the lamp opens the fuse of the alarm.
const granary = sound("granary");
const { distanceIn: _, ...ofItsHolder } = classT;
const granaryFuse = fuseHolder({ ...ofItsHolder, name: "fuse, granary", ratingA: 15, on: granary.positive });
const fromGranary = {
  from: granaryFuse.load,
  returnTo: granary.negative,
  oneWayFt: 6,
  gauge: 12,
} as const;
circuit({ ...fromGranary, name: "granary lamp", load: 8 });
circuit({ ...fromGranary, name: "smoke alarm, granary", load: 0.3 });

// plan/repeated-name and plan/needless-accept: copied from the circuit above it, with its name and an old reason.
const bakery = sound("bakery");
const fromBakery = { from: bakery.positive, returnTo: bakery.negative, oneWayFt: 6, gauge: 12 } as const;
circuit({ ...fromBakery, name: "bakery lamp", load: 3, protect: { ...classT, ratingA: 6 } });
circuit({
  ...fromBakery,
  name: "bakery lamp",
  load: 5,
  protect: { ...classT, ratingA: 10 },
  accept: { "protection/headroom": "It burns for minutes." },
});

// protection/does-not-clear: so long that a short at its end is hardly more than the fuse carries.
const tower = sound("tower");
circuit({
  name: "tower beacon",
  from: tower.positive,
  returnTo: tower.negative,
  load: 3,
  oneWayFt: 90,
  gauge: 10,
  protect: { ratingA: 50, family: "ISO 8820-5 Type SF 30", interruptingA: 5_000, distanceIn: 6 },
  accept: { "conductor/fault-withstand": "Broken on its own by the saw lamp." },
});

// protection/voltage-rating: this family is made for 32 V and no more.
const lift = battery({
  name: "bank, lift",
  chemistry: "AGM",
  nominalV: 48,
  capacityAh: 100,
  shortCircuitA: 900,
});
const liftOff = disconnect({ name: "disconnect, lift", ratedA: 60 });
cable({
  name: "bank cable, lift",
  from: lift.positive,
  to: liftOff.line,
  lengthFt: 2,
  gauge: 6,
  protect: { ...classT, ratingA: 50 },
});
circuit({
  name: "lift lamp",
  voltage: 48,
  from: liftOff.load,
  returnTo: lift.negative,
  load: 3,
  oneWayFt: 8,
  gauge: 12,
  protect: { ratingA: 5, family: "ISO 8820-12 Type N", distanceIn: 6 },
});

// conductor/fault-withstand: the fuse is right for the current, but slower than the conductor is thick.
const saw = sound("saw");
circuit({
  name: "saw lamp",
  from: saw.positive,
  returnTo: saw.negative,
  load: 10,
  oneWayFt: 5,
  gauge: 16,
  protect: { ratingA: 20, family: "ISO 8820-3 Type E", interruptingA: 5_000, distanceIn: 6 },
});

// bus/rating: 80 A go through a bus made for 60 A.
const mill = sound("mill");
const millBus = busBar({ name: "bus, mill", side: "positive", ratedA: 60 });
cable({ name: "bus cable, mill", from: mill.positive, to: millBus.stud, lengthFt: 1, gauge: 2 });
circuit({
  name: "mill motor",
  from: millBus.stud,
  returnTo: mill.negative,
  load: 80,
  oneWayFt: 4,
  gauge: 2,
  protect: { ...classT, ratingA: 100 },
});

// bus/studs: three conductors on two studs.
const store = sound("store");
const storeBus = busBar({ name: "bus, store", side: "positive", studs: 2 });
cable({ name: "bus cable, store", from: store.positive, to: storeBus.stud, lengthFt: 1, gauge: 2 });
for (const shelf of ["upper", "lower"])
  circuit({
    name: `shelf lamp, ${shelf}`,
    from: storeBus.stud,
    returnTo: store.negative,
    load: 2,
    oneWayFt: 6,
    gauge: 14,
    protect: { ...classT, ratingA: 3 },
  });

// panel/rating: a 40 A fuse in a position made for 30 A.
const office = sound("office");
const officePanel = fusePanel({
  name: "panel, office",
  positions: 4,
  branchRatedA: 30,
  accept: { "protection/interrupting": "Broken on its own by the forge alarm." },
});
circuit({
  name: "panel feeder, office",
  from: office.positive,
  returnTo: office.negative,
  to: officePanel,
  oneWayFt: 3,
  gauge: 4,
  protect: { ...classT, ratingA: 80 },
});
circuit({
  name: "office stove",
  from: officePanel.branch,
  load: 25,
  oneWayFt: 6,
  gauge: 8,
  protect: 40,
});

// part/rating: 60 A go through a shunt made for 50 A.
const dairy = sound("dairy");
const dairyMeter = shunt({ name: "shunt, dairy", ratedA: 50 });
cable({
  name: "shunt cable, dairy",
  from: dairy.negative,
  to: dairyMeter.batterySide,
  lengthFt: 1,
  gauge: 2,
});
circuit({
  name: "dairy boiler",
  from: dairy.positive,
  returnTo: dairyMeter.systemSide,
  load: 60,
  oneWayFt: 4,
  gauge: 4,
  protect: { ...classT, ratingA: 80 },
});

// protection/return-conductor: the fuse at the panel's feed lets 80 A through its return, which carries 60 A.
const smithy = sound("smithy");
// panel/fuse-family: its branches take blade fuses, and the bellows have one of Class T.
const smithyPanel = fusePanel({ name: "panel, smithy", positions: 4, branchFamily: "ISO 8820-3 Type C" });
cable({
  name: "panel feed, smithy",
  from: smithy.positive,
  to: smithyPanel.feed,
  lengthFt: 3,
  gauge: 4,
  protect: { ...classT, ratingA: 80 },
});
cable({
  name: "panel return, smithy",
  from: smithyPanel.negative,
  to: smithy.negative,
  lengthFt: 3,
  gauge: 10,
});
circuit({
  name: "bellows",
  from: smithyPanel.branch,
  load: 5,
  oneWayFt: 4,
  gauge: 12,
  protect: { ...classT, ratingA: 10 },
});

// protection/side-by-side: two holders with 80 A each feed 6 AWG, which carries 120 A.
const slipway = sound("slipway");
const slipwayBus = busBar({ name: "bus, slipway", side: "positive" });
for (const side of ["left", "right"])
  cable({
    name: `${side} link, slipway`,
    from: slipway.positive,
    to: slipwayBus.stud,
    lengthFt: 1,
    gauge: 4,
    protect: { ...classT, ratingA: 80 },
  });
circuit({
  name: "slipway winch",
  from: slipwayBus.stud,
  returnTo: slipway.negative,
  load: 60,
  oneWayFt: 3,
  gauge: 6,
});

// protection/starting-current: the blade fuse is gone before the motor turns.
const well = sound("well");
const wellPump = motor({ name: "well pump", runningA: 8, startingA: 70 });
circuit({
  name: "well pump feed",
  from: well.positive,
  returnTo: well.negative,
  to: wellPump,
  oneWayFt: 4,
  gauge: 10,
  protect: { ratingA: 15, family: "ISO 8820-3 Type C", interruptingA: 5_000, distanceIn: 6 },
});

// disconnect/rating: 90 A through contacts made for 50 A.
const press = battery({ name: "bank, press", chemistry: "AGM", capacityAh: 300, internalMilliohm: 3 });
const pressOff = disconnect({ name: "disconnect, press", ratedA: 50 });
cable({
  name: "bank cable, press",
  from: press.positive,
  to: pressOff.line,
  lengthFt: 2,
  gauge: 2,
  protect: { ...classT, ratingA: 125 },
});
circuit({ name: "press", from: pressOff.load, returnTo: press.negative, load: 90, oneWayFt: 3, gauge: 2 });

// disconnect/missing: nothing takes this bank off its load.
const kiln = battery({ name: "bank, kiln", chemistry: "AGM", capacityAh: 100, internalMilliohm: 5 });
circuit({
  name: "kiln fan",
  from: kiln.positive,
  returnTo: kiln.negative,
  load: 8,
  oneWayFt: 6,
  gauge: 12,
  protect: { ...classT, ratingA: 10 },
});

// shunt/bypassed: one return goes around the shunt.
const pump = sound("pump");
const pumpMeter = shunt({ name: "shunt, pump", ratedA: 100 });
cable({ name: "shunt cable, pump", from: pump.negative, to: pumpMeter.batterySide, lengthFt: 1, gauge: 2 });
circuit({
  name: "pump motor",
  from: pump.positive,
  returnTo: pumpMeter.systemSide,
  load: 20,
  oneWayFt: 5,
  gauge: 8,
  protect: { ...classT, ratingA: 30 },
});
circuit({
  name: "pump lamp",
  from: pump.positive,
  returnTo: pump.negative,
  load: 2,
  oneWayFt: 5,
  gauge: 14,
  protect: { ...classT, ratingA: 3 },
});

// network/no-return: the lamp's negative leads to another bank's minus.
const north = sound("north");
const south = sound("south");
heater("north", north);
heater("south", south);
circuit({
  name: "boundary lamp",
  from: north.positive,
  returnTo: south.negative,
  load: 2,
  oneWayFt: 8,
  gauge: 14,
  protect: { ...classT, ratingA: 3 },
});

// network/shorted: the far end of the spare conductor was put on the wrong pole.
const shed = sound("shed");
heater("shed", shed);
const shedBus = busBar({ name: "bus, shed" });
cable({
  name: "spare conductor, shed",
  from: shed.positive,
  to: shedBus.stud,
  lengthFt: 3,
  gauge: 6,
  protect: { ...classT, ratingA: 60 },
});
cable({ name: "wrong pole, shed", from: shedBus.stud, to: shed.negative, lengthFt: 3, gauge: 6 });

// network/unconnected: a load with nothing at its positive terminal.
const barn = sound("barn");
heater("barn", barn);
const barnLamp = load({ name: "barn lamp", currentA: 2 });
cable({ name: "barn lamp return", from: barnLamp.negative, to: barn.negative, lengthFt: 8, gauge: 14 });

// network/two-grounds: the negative side meets the frame twice, and the frame carries part of the return current.
const trailer = sound("trailer");
heater("trailer", trailer);
const frame = chassis({ name: "trailer frame", milliohm: 2 });
const trailerBack = busBar({ name: "negative bus, trailer", side: "negative" });
cable({ name: "bank return, trailer", from: trailer.negative, to: trailerBack.stud, lengthFt: 2, gauge: 2 });
cable({ name: "bond at the bank", from: trailer.negative, to: frame.bond, lengthFt: 1, gauge: 2 });
cable({ name: "bond at the bus", from: trailerBack.stud, to: frame.metal, lengthFt: 9, gauge: 2 });

// battery/discharge-current: the maker allows 20 A, the heater draws 30 A.
heater("dock", sound("dock", { maxDischargeA: 20 }), 30);

// battery/charge-current: the maker allows 20 A, the charger gives 40 A.
const quay = sound("quay", { maxChargeA: 20 });
heater("quay", quay, 5);
const quayCharger = shoreCharger({ name: "charger, quay", outputA: 40 });
cable({
  name: "charger cable, quay",
  from: quayCharger.positive,
  to: quay.positive,
  lengthFt: 4,
  gauge: 6,
  protectFarEnd: { ...classT, ratingA: 60 },
});
cable({ name: "charger return, quay", from: quayCharger.negative, to: quay.negative, lengthFt: 4, gauge: 6 });

// battery/parallel-imbalance: one of two equal batteries hangs on a lead that is ten times as long.
const nearBus = busBar({ name: "bus, pair", side: "positive" });
const nearBack = busBar({ name: "return, pair", side: "negative" });
for (const [place, lengthFt] of [
  ["near", 1],
  ["far", 10],
] as const) {
  const one = battery({ name: `battery, ${place}`, chemistry: "AGM", capacityAh: 100, internalMilliohm: 2 });
  cable({
    name: `lead, ${place}`,
    from: one.positive,
    to: nearBus.stud,
    lengthFt,
    gauge: 4,
    protect: { ...classT, ratingA: 100 },
  });
  cable({ name: `return lead, ${place}`, from: one.negative, to: nearBack.stud, lengthFt, gauge: 4 });
}
const pairOff = disconnect({ name: "disconnect, pair", ratedA: 100 });
cable({ name: "to the disconnect, pair", from: nearBus.stud, to: pairOff.line, lengthFt: 1, gauge: "2/0" });
circuit({
  name: "heater, pair",
  from: pairOff.load,
  returnTo: nearBack.stud,
  load: 30,
  oneWayFt: 4,
  gauge: 6,
  protect: { ...classT, ratingA: 60 },
});

// inverter/supply: enough at 12 V, but at its cut-off voltage the inverter draws more than the fuse carries.
const kitchen = sound("kitchen");
const kettle = inverter({ name: "kettle inverter", continuousW: 800, loadW: 300, cutOffV: 10.5 });
circuit({
  name: "inverter supply, kitchen",
  from: kitchen.positive,
  returnTo: kitchen.negative,
  to: kettle,
  oneWayFt: 3,
  gauge: 2,
  protect: { ...classT, ratingA: 60 },
});

// charger/input-current: 30 A out at 14.4 V are 51 A in at 9.5 V, more than the fuse before it carries.
const van = sound("van");
const vanCharger = dcDcCharger({
  name: "charger, van",
  outputA: 30,
  inputMinV: 9.5,
  isolated: true,
  runs: "always",
});
circuit({
  name: "charger input, van",
  from: van.positive,
  returnTo: van.negative,
  to: vanCharger,
  oneWayFt: 3,
  gauge: 4,
  protect: { ...classT, ratingA: 50 },
});
const vanSecond = sound("second, van");
heater("second, van", vanSecond, 5);
cable({
  name: "charger output, van",
  from: vanCharger.outputPositive,
  to: vanSecond.positive,
  lengthFt: 3,
  gauge: 6,
  protectFarEnd: { ...classT, ratingA: 60 },
});
cable({
  name: "charger output return, van",
  from: vanCharger.outputNegative,
  to: vanSecond.negative,
  lengthFt: 3,
  gauge: 6,
});

// alternator/overload: it gives 50 A for minutes, not for hours.
const truck = sound("truck");
heater("truck", truck, 45);
const engine = alternator({
  name: "alternator",
  ratedA: 50,
  accept: { "alternator/load-dump": "the disconnect switches its field off first" },
});
cable({
  name: "alternator cable",
  from: engine.positive,
  to: truck.positive,
  lengthFt: 4,
  gauge: 4,
  protectFarEnd: { ...classT, ratingA: 80 },
});
cable({ name: "alternator return", from: engine.negative, to: truck.negative, lengthFt: 4, gauge: 4 });

// protection/selectivity: a short in one of the two lamps may open the fuse that both hang on.
const gallery = sound("gallery");
const galleryPanel = fusePanel({ name: "panel, gallery", positions: 4 });
circuit({
  name: "panel feeder, gallery",
  from: gallery.positive,
  returnTo: gallery.negative,
  to: galleryPanel,
  oneWayFt: 6,
  gauge: 8,
  protect: { ratingA: 30, family: "ISO 8820-3 Type C", interruptingA: 5_000, distanceIn: 6 },
});
for (const wall of ["left", "right"])
  circuit({
    name: `picture lamps, ${wall}`,
    from: galleryPanel.branch,
    load: 8,
    oneWayFt: 4,
    gauge: 10,
    protect: { ratingA: wall === "left" ? 30 : 10, family: "ISO 8820-3 Type C", interruptingA: 5_000 },
  });

// battery/unlike: AGM and gel in one bank.
const oddBus = busBar({ name: "bus, odd pair", side: "positive" });
const oddBack = busBar({ name: "return, odd pair", side: "negative" });
for (const chemistry of ["AGM", "gel"] as const) {
  const one = battery({ name: `battery, ${chemistry}`, chemistry, capacityAh: 100, internalMilliohm: 5 });
  cable({
    name: `lead, ${chemistry}`,
    from: one.positive,
    to: oddBus.stud,
    lengthFt: 2,
    gauge: 4,
    protect: { ...classT, ratingA: 100 },
  });
  cable({ name: `return, ${chemistry}`, from: one.negative, to: oddBack.stud, lengthFt: 2, gauge: 4 });
}
const oddOff = disconnect({ name: "disconnect, odd pair", ratedA: 200 });
cable({ name: "bank cable, odd pair", from: oddBus.stud, to: oddOff.line, lengthFt: 1, gauge: "4/0" });
heater("odd pair", { positive: oddOff.load, negative: oddBack.stud });

/** A string of 24 V behind its fuse and its disconnect. */
function string(name: string, linkGauge: 4 | 10) {
  const block = { chemistry: "AGM", nominalV: 12, capacityAh: 100, internalMilliohm: 5 } as const;
  const lower = battery({ ...block, name: `lower block, ${name}` });
  const upper = battery({ ...block, name: `upper block, ${name}` });
  cable({
    name: `link, ${name}`,
    from: lower.positive,
    to: upper.negative,
    lengthFt: 1,
    gauge: linkGauge,
  });
  const off = disconnect({ name: `disconnect, ${name}`, ratedA: 150 });
  cable({
    name: `bank cable, ${name}`,
    from: upper.positive,
    to: off.line,
    lengthFt: 2,
    gauge: 4,
    protect: { ...classT, ratingA: 100 },
  });
  heater(name, { positive: off.load, negative: lower.negative });
  return { off, lower };
}

// battery/links: the 100 A fuse lets through more than a link of 10 AWG may carry.
string("crane", 10);

// battery/half-bank: a lamp of 12 V hangs on the lower half of 24 V.
const silo = string("silo", 4);
circuit({
  name: "silo lamp",
  from: silo.lower.positive,
  returnTo: silo.lower.negative,
  load: 2,
  oneWayFt: 5,
  gauge: 14,
  protect: { ...classT, ratingA: 3 },
  accept: { "disconnect/missing": "Broken on its own by the kiln fan." },
});

/** A charger of 15 A on a bank. */
function charger(name: string, at: Feed, outputV?: number) {
  const own = shoreCharger({
    name: `charger, ${name}`,
    outputA: 15,
    ...(outputV !== undefined && { outputV }),
  });
  cable({
    name: `charger cable, ${name}`,
    from: own.positive,
    to: at.positive,
    lengthFt: 4,
    gauge: 6,
    protectFarEnd: { ...classT, ratingA: 60 },
  });
  cable({ name: `charger return, ${name}`, from: own.negative, to: at.negative, lengthFt: 4, gauge: 6 });
}

// battery/charging-voltage: 15.2 V, and AGM takes up to 14.7 V.
const jetty = sound("jetty");
heater("jetty", jetty, 5);
charger("jetty", jetty, 15.2);

// battery/cold-charge: a lithium battery in a box that freezes, and nothing stops its charger.
const icehouse = battery({
  name: "bank, icehouse",
  chemistry: "LiFePO4",
  capacityAh: 100,
  internalMilliohm: 6,
  lowestC: -15,
});
const icehouseOff = disconnect({ name: "disconnect, icehouse", ratedA: 150 });
cable({
  name: "bank cable, icehouse",
  from: icehouse.positive,
  to: icehouseOff.line,
  lengthFt: 2,
  gauge: 2,
  protect: { ...classT, ratingA: 125 },
});
heater("icehouse", { positive: icehouseOff.load, negative: icehouse.negative }, 5);
charger("icehouse", { positive: icehouseOff.load, negative: icehouse.negative });

// battery/fifty-volts: sixteen cells of LiFePO4, whose conductors are of other types.
const mast = battery({
  name: "bank, mast",
  chemistry: "LiFePO4",
  nominalV: 51.2,
  capacityAh: 100,
  internalMilliohm: 20,
});
const mastOff = disconnect({ name: "disconnect, mast", ratedA: 150 });
cable({
  name: "bank cable, mast",
  from: mast.positive,
  to: mastOff.line,
  lengthFt: 2,
  gauge: 4,
  protect: { ...classT, ratingA: 100 },
});
heater("mast", { positive: mastOff.load, negative: mast.negative });

// network/wrong-port: the circuit from the bank ends at the modules' side of the controller.
const glasshouse = sound("glasshouse");
heater("glasshouse", glasshouse, 5);
circuit({
  name: "controller feed, glasshouse",
  from: glasshouse.positive,
  returnTo: glasshouse.negative,
  to: solarController({
    name: "controller, glasshouse",
    maxInputV: 50,
    outputA: 20,
    accept: { "network/unconnected": "follows from its feed" },
  }),
  oneWayFt: 4,
  gauge: 8,
  protect: { ...classT, ratingA: 40 },
});

// conductor/no-length: the way to the lamp was never measured.
const boathouse = sound("boathouse");
circuit({
  name: "lamp, boathouse",
  from: boathouse.positive,
  returnTo: boathouse.negative,
  load: 5,
  gauge: 10,
  protect: { ...classT, ratingA: 10 },
});
