import { circuit, period } from "loomwright";

// Faulty on purpose: a workshop trailer in which each rule is broken once. Do not build any of this.
// What each circuit does wrong stands above it; the fixes are proposed by the checker.

const wire = { insulationC: 105 } as const;

// conductor/ampacity: 16 AWG of this insulation cannot carry 30 A.
circuit({
  ...wire,
  name: "bench heater",
  load: 30,
  continuous: false,
  oneWayFt: 2,
  gauge: 16,
  protect: 25,
  accept: { "protection/below-load": "Broken on its own by the compressor below." },
});

// conductor/voltage-drop: heat is no trouble, but the far end is left with too little voltage.
circuit({ ...wire, name: "yard light", load: 8, oneWayFt: 60, gauge: 12, protect: 10 });

// conductor/minimum-size: 18 AWG only inside a sheath.
circuit({ ...wire, name: "clock", load: 0.2, oneWayFt: 6, gauge: 18, protect: 2 });

// part/other-voltage: a lamp that works from 9.5 V on, and that must be one for 12 V.
circuit({
  ...wire,
  name: "borrowed lamp",
  voltage: 24,
  load: 2,
  minimumV: 9.5,
  oneWayFt: 6,
  gauge: 14,
  protect: 3,
});

// conductor/terminal-size: 10 AWG does not go into the lamp's terminals.
circuit({
  ...wire,
  name: "lathe lamp",
  load: 2,
  oneWayFt: 6,
  gauge: 10,
  protect: 3,
  largestGauge: 14,
});

// conductor/insulation-not-stated: nobody says what the wire may bear.
circuit({ name: "radio", load: 2, oneWayFt: 8, gauge: 14, protect: 5 });

// conductor/ambient: 60 °C insulation beside a stove pipe.
circuit({ name: "stove fan", load: 1, oneWayFt: 6, gauge: 14, insulationC: 60, ambientC: 65, protect: 3 });

// protection/missing
circuit({ ...wire, name: "door bell", load: 0.5, oneWayFt: 12, gauge: 16 });

// protection/above-conductor: the wire would burn before the fuse opens.
circuit({ ...wire, name: "vice lights", load: 6, oneWayFt: 8, gauge: 14, protect: 60 });

// protection/permitted-fuse: the manual of the charger says 15 A.
circuit({ ...wire, name: "tool charger", load: 8, oneWayFt: 5, gauge: 10, protect: 30, maxFuseA: 15 });

// protection/holder-rating: the in-line holder is marked 20 A.
circuit({
  ...wire,
  name: "glue pot",
  load: 18,
  oneWayFt: 5,
  gauge: 10,
  protect: { ratingA: 25, holderRatedA: 20 },
});

// protection/below-load: opens as soon as the compressor runs.
circuit({ ...wire, name: "compressor", load: 18, oneWayFt: 6, gauge: 8, protect: 15 });

// protection/headroom: a continuous load at the fuse's own rating.
circuit({ ...wire, name: "soldering bench", load: 15, oneWayFt: 6, gauge: 10, protect: 15 });

// protection/standard-rating: nobody makes a 13 A blade fuse.
circuit({
  ...wire,
  name: "glue oven",
  load: 10,
  oneWayFt: 6,
  gauge: 10,
  protect: { ratingA: 13, family: "ISO 8820-3 Type C" },
});

// protection/distance: 30 in of unprotected wire in the open.
circuit({
  ...wire,
  name: "drill charger",
  load: 8,
  oneWayFt: 8,
  gauge: 12,
  protect: { ratingA: 10, distanceIn: 30 },
});

// protection/both-ends: the far battery can feed this wire too, and nothing protects that end.
circuit({
  ...wire,
  name: "link to the second battery",
  load: 30,
  oneWayFt: 6,
  gauge: 6,
  fedFromBothEnds: true,
  protect: 40,
});

// conductor/terminal-temperature: 10 AWG carries 50 A by its insulation; nobody read what the fuse holder withstands.
circuit({
  ...wire,
  name: "steam box",
  load: 50,
  oneWayFt: 4,
  gauge: 10,
  continuous: false,
  protect: 60,
});

// conductor/parallel: if one of the two wires comes loose, the other carries what it may not.
circuit({
  ...wire,
  name: "forge blower",
  load: 90,
  oneWayFt: 4,
  gauge: 8,
  parallel: 2,
  bundledWith: 1,
  protect: 125,
});

// plan/invalid-value: a load below zero.
circuit({ ...wire, name: "dust fan", load: -4, oneWayFt: 8, gauge: 14, protect: 10 });

// plan/accept-without-reason: accepted, but nobody says why.
circuit({
  ...wire,
  name: "step light",
  load: 1,
  oneWayFt: 60,
  gauge: 16,
  protect: 2,
  accept: { "conductor/voltage-drop": "" },
});

// plan/unit-suspect: every other run is measured in feet, and so was this one.
circuit({ ...wire, name: "tool wall", load: 3, oneWayM: 12, gauge: 12, protect: 5 });

// energy/no-bank: a year of use, and no battery in the plan.
period({ name: "all year", place: "Tarifa, ES" });
