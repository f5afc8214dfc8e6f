import {
  battery,
  build,
  busBar,
  cable,
  circuit,
  disconnect,
  inverter,
  motor,
  shoreCharger,
} from "loomwright";

// A harbour taxi: two 48 V lithium packs in parallel, each with its own fuse, drive motor and dock charger.
build({ name: "harbour taxi", voltage: 48, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const packPlus = busBar({ name: "pack plus", side: "positive", ratedA: 300, studs: 4 });
const minusBus = busBar({ name: "minus bus", side: "negative", ratedA: 300, studs: 6 });
for (const side of ["port", "starboard"]) {
  const pack = battery({
    name: `pack, ${side}`,
    chemistry: "LiFePO4",
    nominalV: 48,
    capacityAh: 120,
    internalMilliohm: 12,
    maxDischargeA: 120,
    maxChargeA: 60,
  });
  cable({
    name: `pack plus, ${side}`,
    from: pack.positive,
    to: packPlus.stud,
    lengthFt: 3,
    gauge: 2,
    protect: { ...classT, ratingA: 125, distanceIn: 6 },
  });
  cable({ name: `pack minus, ${side}`, from: pack.negative, to: minusBus.stud, lengthFt: 3, gauge: 2 });
}
const mainSwitch = disconnect({ name: "main switch", ratedA: 300 });
const plusBus = busBar({ name: "plus bus", side: "positive", ratedA: 300, studs: 5 });
cable({ name: "packs to switch", from: packPlus.stud, to: mainSwitch.line, lengthFt: 1, gauge: "1/0" });
cable({ name: "switch to bus", from: mainSwitch.load, to: plusBus.stud, lengthFt: 1, gauge: "1/0" });

const fromBus = { from: plusBus.stud, returnTo: minusBus.stud } as const;
const drive = motor({ name: "drive", runningA: 140, startingA: 160, minimumV: 40 });
circuit({
  ...fromBus,
  name: "drive cable",
  to: drive,
  oneWayFt: 10,
  gauge: 2,
  protect: { ...classT, ratingA: 175, distanceIn: 5 },
});
const small = inverter({ name: "ticket inverter", continuousW: 300, efficiencyPercent: 88, cutOffV: 42 });
circuit({
  ...fromBus,
  name: "ticket inverter supply",
  to: small,
  oneWayFt: 6,
  gauge: 12,
  protect: { ...classT, ratingA: 15, distanceIn: 5 },
});

const dock = shoreCharger({ name: "dock charger", outputA: 50, outputV: 56.8 });
cable({
  name: "dock plus",
  from: dock.positive,
  to: plusBus.stud,
  lengthFt: 6,
  gauge: 6,
  protectFarEnd: { ...classT, ratingA: 70, distanceIn: 5 },
});
cable({ name: "dock minus", from: dock.negative, to: minusBus.stud, lengthFt: 6, gauge: 6 });
