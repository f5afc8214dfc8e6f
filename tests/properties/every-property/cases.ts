import type { PartWord } from "../../../library/model/parts/index.ts";
import { breaker, fuseHolder } from "../../../library/plan/index.ts";
import type { RuleId } from "../../../library/plan/rule-id.ts";
import { energyCases, useOfCircuit, useRefused } from "./energy-cases.ts";
import { placementCases, placementOfCircuit, placementOfPart, placeRefused } from "./placement-cases.ts";
import {
  alone,
  boat,
  boatWithScenario,
  type Plan,
  threeBanks,
  type Values,
  van,
  vanWithDevice,
  vanWithMetal,
} from "./plans.ts";

/*
 * For each property a small plan in which it matters: two values, and the effect of changing one into the other. A property that
 * is a limit or a requirement has a finding as its effect; one that only describes has a document.
 */

/** The differences: in the findings of a rule, in the calculated figures, or in documents alone. Or a value is refused. */
export type Effect = { readonly finding: RuleId } | "figures" | "documents" | "refused";

export interface Case {
  /** "battery.maxChargeA" */
  readonly property: string;
  readonly effect: Effect;
  readonly plan: Plan;
  /** The name of the call that states the property, and the path there: "house.maxChargeA". */
  readonly at: string;
  readonly values: readonly [unknown, unknown];
  /** Values of other properties in both plans. */
  readonly given: Values;
}

const made = boat();

/** The path within the call; the indices of lists are no part of the property's name. */
type Row = readonly [path: string, effect: Effect, values: Case["values"], given?: Values];

function at(plan: Plan, name: string, word: string, rows: readonly Row[]): Case[] {
  return rows.map(([path, effect, values, given = {}]) => ({
    property: `${word}.${path.replace(/\.\d+/g, "")}`,
    ...{ effect, plan, at: `${name}.${path}`, values, given },
  }));
}

const finding = (rule: RuleId): Effect => ({ finding: rule });
const overVoltage = finding("part/other-voltage");
const text: Case["values"] = [undefined, "changed"];
const yes: Case["values"] = [false, true];

/** The properties that every part has, and a finding that it can have, with the values that cause it. */
function ofEveryPart(word: PartWord, name: string, rule: RuleId, given: Values, plan?: Plan): Case[] {
  return [
    ...at(plan ?? made, name, word, [
      ["accept", finding(rule), [undefined, { [rule]: "on purpose" }], given],
    ]),
    ...at(made, name, word, [
      ["name", "documents", text],
      ["source", "documents", text],
      ["termination", "documents", [undefined, "M8"]],
      ["torqueNm", "documents", [undefined, 9]],
      ["price", "documents", [undefined, 45]],
      ...largestConductor(""),
    ]),
    ...placementOfPart(word, name),
  ];
}

/** Of terminals at which conductors of AWG end. */
function largestConductor(which: "" | "branch"): readonly Row[] {
  const [gauge, mm2] =
    which === "" ? ["largestGauge", "largestMm2"] : ["branchLargestGauge", "branchLargestMm2"];
  return [
    [gauge!, finding("conductor/terminal-size"), [undefined, 18]],
    [mm2!, finding("conductor/terminal-size"), [undefined, 0.75]],
  ];
}

const permittedFuse = finding("protection/permitted-fuse");

const family = "UL 248-15 Class T";
const tested = { family, ratingA: 200, interruptingA: 20_000 };

/**
 * The behaviour of a device in a short; `path` leads to the device. `given` makes it a device behind another of Class T, and of a
 * conductor of 10 AWG.
 */
function inShort(path: string, prefix: string, given: Values): readonly Row[] {
  const weak = { ...given, [`${path}interruptingA`]: 200, [`${path}family`]: undefined };
  const combined = { ...weak, [`${path}testedBehind`]: tested };
  const slow = [{ atPercent: 1_000, withinS: 4 }];
  const stated = { ...weak, [`${path}openingTimes`]: slow };
  const interrupting = finding("protection/interrupting");
  const withstand = finding("conductor/fault-withstand");
  return [
    [`${prefix}openingTimes`, withstand, [undefined, slow], weak],
    [`${prefix}openingTimes.0.atPercent`, finding("protection/does-not-clear"), [200, 90_000], stated],
    [`${prefix}openingTimes.0.afterS`, interrupting, [0.001, 3], stated],
    [`${prefix}openingTimes.0.withinS`, withstand, [0.01, 4], stated],
    [`${prefix}letThroughA2s`, withstand, [100, 1e6], given],
    [`${prefix}withstandA2s`, interrupting, [1, 1e9], weak],
    [
      `${prefix}interruptingAtV`,
      interrupting,
      [undefined, 6],
      { ...given, [`${path}interruptingA`]: 20_000 },
    ],
    [`${prefix}testedBehind`, interrupting, [undefined, tested], weak],
    [`${prefix}testedBehind.family`, interrupting, [family, "ISO 8820-5 Type SF 30"], combined],
    [`${prefix}testedBehind.ratingA`, interrupting, [200, 2], combined],
    [`${prefix}testedBehind.interruptingA`, interrupting, [20_000, 210], combined],
  ];
}

/** A fuse or breaker in a conductor of a network, where 25 A flow. */
function protection(name: string, property: string, given: Values = {}): readonly Row[] {
  const path = `${name}.${property}`;
  const object: Values = { [path]: { ratingA: 30, family: "ISO 8820-3 Type C", distanceIn: 5 }, ...given };
  const thin = { ...object, [`${name}.gauge`]: 14 };
  return [
    [property, finding("protection/above-conductor"), [20, 500], given],
    [`${property}.ratingA`, finding("protection/above-conductor"), [20, 500], object],
    [
      `${property}.family`,
      finding("protection/standard-rating"),
      ["ISO 8820-3 Type C", "ISO 8820-5 Type SF 51"],
      object,
    ],
    [`${property}.distanceIn`, finding("protection/distance"), [5, 200], object],
    [
      ...([`${property}.distanceMm`, finding("protection/distance"), [100, 5_000]] as const),
      { ...object, [`${path}.distanceIn`]: undefined },
    ],
    [`${property}.interruptingA`, finding("protection/interrupting"), [20_000, 20], object],
    [`${property}.ratedV`, finding("protection/voltage-rating"), [58, 5], object],
    [`${property}.holderRatedA`, finding("protection/holder-rating"), [30, 20], object],
    [`${property}.terminalC`, finding("conductor/ampacity"), [105, 60], thin],
    [`${property}.largestGauge`, finding("conductor/terminal-size"), [undefined, 18], object],
    [`${property}.largestMm2`, finding("conductor/terminal-size"), [undefined, 0.75], object],
    [
      `${property}.ambientC`,
      finding("protection/headroom"),
      [20, 70],
      { ...object, [`${path}.ratingA`]: 35 },
    ],
    [`${property}.price`, "documents", [1, 4], object],
    ...inShort(`${path}.`, `${property}.`, { ...object, "feed.protect.letThroughA2s": 1_000 }),
  ];
}

/** The same where no current of a fault behind the device is known: its behaviour in a short is only listed. */
function protectionWithoutShort(name: string, property: string, given: Values = {}): readonly Row[] {
  const ofShort = /\.(interruptingA|interruptingAtV|openingTimes|letThroughA2s|withstandA2s|testedBehind)/;
  return protection(name, property, given).map(
    ([path, effect, values, { "feed.protect.letThroughA2s": _, ...others } = {}]) => [
      path,
      ofShort.test(path) ? "documents" : effect,
      values,
      others,
    ],
  );
}

/** A device at the end of a conductor that leads to another bank: its behaviour in a short of that bank. */
function atFarBank(name: string, more = /^$/): readonly Row[] {
  const rows = protection(name, "protectFarEnd", { [`${name}.gauge`]: 10 });
  const judged = /(family|interruptingA|ratedV|openingTimes|withinS|letThroughA2s|distanceIn)$/;
  return rows.filter(([path]) => (judged.test(path) && !path.includes("Behind")) || more.test(path));
}

/** Construction and surroundings of a conductor, by the name of the call. */
function ofRun(name: string): readonly Row[] {
  return [
    ["name", "documents", text],
    ["gauge", finding("conductor/ampacity"), [10, 18]],
    ["mm2", finding("conductor/ampacity"), [6, 0.75], { [`${name}.gauge`]: undefined }],
    ["insulationC", finding("conductor/ampacity"), [200, 60], { [`${name}.gauge`]: 16 }],
    ["engineSpace", "figures", yes],
    ["ambientC", finding("conductor/ampacity"), [20, 70], { [`${name}.gauge`]: 14 }],
    ["bundledWith", "figures", [1, 60]],
    ["sheathed", finding("conductor/minimum-size"), yes, { [`${name}.gauge`]: 18 }],
    ["parallel", "figures", [1, 2]],
    ["continuous", finding("protection/headroom"), yes],
    [
      "accept",
      finding("conductor/ampacity"),
      [undefined, { "conductor/ampacity": "why" }],
      { [`${name}.gauge`]: 18, [`${name}.ambientC`]: 60 },
    ],
    ["colour", "documents", text],
    ["label", "documents", text],
  ];
}

function lengths(name: string, kept: string): readonly Row[] {
  const none = { [`${name}.${kept}`]: undefined };
  const drop = finding("conductor/voltage-drop");
  return [
    ["oneWayFt", drop, [3, 300], none],
    ["oneWayM", drop, [1, 100]],
    ["positiveFt", drop, [3, 600], { ...none, [`${name}.negativeFt`]: 3 }],
    ["negativeFt", drop, [3, 600], { ...none, [`${name}.positiveFt`]: 3 }],
    ["positiveM", drop, [1, 200], { ...none, [`${name}.negativeM`]: 1 }],
    ["negativeM", drop, [1, 200], { ...none, [`${name}.positiveM`]: 1 }],
  ];
}

/** A circuit alone. */
const circuitAlone = at(alone(), "lamp", "circuit", [
  ...ofRun("lamp"),
  ...lengths("lamp", "oneWayM"),
  ...protectionWithoutShort("lamp", "protect", { "settings.insulationC": 105 }),
  ...protectionWithoutShort("lamp", "protectFarEnd", {
    "settings.insulationC": 105,
    "lamp.fedFromBothEnds": true,
  }),
  ["load", finding("protection/below-load"), [5, 50]],
  ["loadW", finding("protection/below-load"), [50, 600], { "lamp.load": undefined }],
  ["voltage", finding("conductor/voltage-drop"), [12, 1]],
  ["critical", finding("conductor/voltage-drop"), yes, { "lamp.oneWayM": 8 }],
  ["purpose", "refused", [undefined, "alarm"]],
  ...largestConductor(""),
  ["maxFuseA", permittedFuse, [40, 10]],
  ["dropLimitPercent", finding("conductor/voltage-drop"), [20, 0.1]],
  ["fromBattery", finding("protection/distance"), yes, { "lamp.protect": { ratingA: 30, distanceIn: 50 } }],
  ["minimumV", finding("conductor/voltage-drop"), [1, 11.9]],
  ["maximumV", overVoltage, [32, 11.9]],
  ["fedFromBothEnds", finding("protection/both-ends"), yes],
  ["returnColour", "documents", text],
  ["termination", "documents", [undefined, "M6"]],
  ["returnTo", "refused", [undefined, { kind: "terminal", part: 0, of: "build", terminal: "x" }]],
  ["to", "refused", [undefined, { kind: "build", id: 0 }]],
  ["from", "refused", [undefined, { kind: "build", id: 0 }]],
]);

const small = van();

/** A circuit of a network with a load of its own. */
const circuitWithLoad = at(small, "lamp", "circuit", [
  ...ofRun("lamp"),
  ...lengths("lamp", "oneWayM"),
  ...protection("lamp", "protect"),
  ...protectionWithoutShort("lamp", "protectFarEnd"),
  ["load", finding("protection/below-load"), [5, 50]],
  ["loadW", finding("protection/below-load"), [50, 600], { "lamp.load": undefined }],
  ["voltage", "refused", [12, 24]],
  ["critical", finding("conductor/voltage-drop"), yes, { "lamp.oneWayM": 8 }],
  [
    "purpose",
    finding("protection/shared-alarm"),
    [undefined, "alarm"],
    { "lamp.protect": undefined, "heaterFeed.protect": undefined },
  ],
  ...largestConductor(""),
  ["maxFuseA", permittedFuse, [40, 10]],
  ["dropLimitPercent", finding("conductor/voltage-drop"), [20, 0.5]],
  ["fromBattery", "refused", yes],
  ["minimumV", finding("scenario/device-below-minimum"), [1, 12]],
  ["maximumV", overVoltage, [32, 11.9]],
  ["fedFromBothEnds", "refused", [undefined, true]],
  ["returnColour", "documents", text],
  ["termination", "documents", [undefined, "M6"]],
  ["from", "figures", [small.plus.stud, small.house.positive]],
  ["returnTo", "figures", [small.minus.stud, small.house.negative]],
  ["to", "figures", [small.winch, small.kettle], { "lamp.load": undefined }],
]);

/** A circuit of a network that ends at a part. */
const circuitToPart = at(small, "heaterFeed", "circuit", [
  ...ofRun("heaterFeed"),
  ...lengths("heaterFeed", "oneWayM"),
  ...protection("heaterFeed", "protect"),
  ...protectionWithoutShort("heaterFeed", "protectFarEnd"),
  ["load", "refused", [undefined, 5]],
  ["loadW", "refused", [undefined, 50]],
  ["voltage", "refused", [12, 24]],
  ["critical", finding("conductor/voltage-drop"), yes, { "heaterFeed.oneWayM": 8 }],
  ["purpose", "refused", [undefined, "alarm"]],
  ["largestGauge", "refused", [undefined, 18]],
  ["largestMm2", "refused", [undefined, 0.75]],
  ["maxFuseA", "refused", [undefined, 10]],
  ["dropLimitPercent", finding("conductor/voltage-drop"), [20, 0.5]],
  ["fromBattery", "refused", yes],
  ["minimumV", "refused", [undefined, 10]],
  ["maximumV", "refused", [undefined, 32]],
  ["fedFromBothEnds", "refused", [undefined, true]],
  ["returnColour", "documents", text],
  ["termination", "refused", [undefined, "M6"]],
  ["from", "figures", [small.plus.stud, small.house.positive]],
  ["returnTo", "figures", [small.minus.stud, small.house.negative]],
  ["to", "figures", [small.heater, small.kettle]],
]);

function cableCases(name: string): Case[] {
  return at(small, name, "cable", [
    ...ofRun(name),
    ["lengthM", "figures", [1, 100]],
    ["lengthFt", "figures", [1, 300], { [`${name}.lengthM`]: undefined }],
  ]);
}

const banks = threeBanks();

const cables: readonly Case[] = [
  ...at(small, "winchFeed", "cable", [
    ...protection("winchFeed", "protect"),
    ...protectionWithoutShort("winchFeed", "protectFarEnd"),
  ]),
  ...at(small, "winchReturn", "cable", [["protect", finding("protection/interrupting"), [undefined, 30]]]),
  ...at(banks, "strap", "cable", atFarBank("strap", /Behind|withstandA2s|afterS/)),
  ...at(banks, "link", "circuit", atFarBank("link")),
  ...cableCases("winchFeed"),
  // Nothing in it has a rating that its hours could raise.
  ...cableCases("winchReturn").filter(({ property }) => property !== "cable.continuous"),
  ...at(small, "winchFeed", "cable", [
    ["from", "figures", [small.plus.stud, small.house.positive]],
    ["to", "figures", [small.winch.positive, small.heater.positive]],
  ]),
];

const builds: readonly Case[] = [
  ...at(alone(), "settings", "build", [
    ["name", "documents", text],
    ["voltage", finding("conductor/voltage-drop"), [12, 1]],
    ["ambientC", finding("conductor/ampacity"), [30, 70]],
    ["insulationC", finding("conductor/insulation-not-stated"), [undefined, 75]],
    ["engineSpace", "figures", yes],
    ["continuous", finding("protection/headroom"), yes],
    ["criticalDropPercent", finding("conductor/voltage-drop"), [19, 0.1], { "lamp.critical": true }],
    ["dropPercent", finding("conductor/voltage-drop"), [19, 0.1]],
    ["slackPercent", "documents", [10, 90]],
    ["endSlackMm", "documents", [10, 900]],
    ["endSlackIn", "documents", [1, 30]],
    ["spareFuses", "documents", [0, 9]],
    ["wireByLength", "documents", [false, true]],
    ["positiveColour", "documents", text],
    ["negativeColour", "documents", text],
    ["currency", "documents", [undefined, "EUR"], { "lamp.protect": { ratingA: 30, price: 4 } }],
    ["spools", "documents", [[], [{ gauge: 10, lengthM: 30 }]]],
    ["spools.0.gauge", "documents", [10, 14], { "settings.spools": [{ gauge: 10, lengthM: 30 }] }],
    [
      "spools.0.mm2",
      "documents",
      [6, 10],
      { "settings.spools": [{ mm2: 6, lengthM: 30 }], "lamp.gauge": undefined, "lamp.mm2": 6 },
    ],
    ["spools.0.lengthM", "documents", [30, 50], { "settings.spools": [{ gauge: 10, lengthM: 30 }] }],
    ["spools.0.lengthFt", "documents", [30, 50], { "settings.spools": [{ gauge: 10, lengthFt: 30 }] }],
    [
      "spools.0.colour",
      "documents",
      [undefined, "green"],
      { "settings.spools": [{ gauge: 10, lengthM: 30 }] },
    ],
    [
      ...(["spools.0.sheathed", "documents", [undefined, "flat duplex"]] as const),
      { "settings.spools": [{ gauge: 10, lengthM: 30 }] },
    ],
    ["spools.0.price", "documents", [3, 90], { "settings.spools": [{ gauge: 10, lengthM: 30 }] }],
  ]),
  ...at(made, "settings", "build", [
    ["lowestC", finding("solar/cold-voltage"), [20, -40], { "sun.maxInputV": 47 }],
    [
      "installedIn",
      finding("protection/unprotected-path"),
      ["boat with petrol engine", "vehicle"],
      { "engine.selfLimiting": false, "engineFeed.protectFarEnd": 150 },
    ],
  ]),
];

const withState = boatWithScenario();
const { heater, kettle, mainSwitch, pump, selector, house } = withState;

const scenarios = at(withState, "state", "scenario", [
  ["name", "documents", ["at anchor", "changed"]],
  ["on", "figures", [[heater], [kettle]]],
  ["off", "figures", [[], [mainSwitch]]],
  ["starting", "figures", [[], [pump]]],
  ["selected", "figures", [[selector.input1], [selector.input2]], { "state.starting": [withState.starter] }],
  ["engine", "figures", yes],
  ["shore", "figures", yes],
  ["sunPercent", "figures", [0, 100]],
  ["chargePercent", "figures", [20, 90]],
  ["bankV", "figures", [12, 13]],
  ["charges", "figures", [[], [{ battery: house, percent: 10 }]]],
  [
    "charges.0.battery",
    "figures",
    [house, withState.start],
    { "state.charges": [{ battery: house, percent: 10 }] },
  ],
  ["charges.0.percent", "figures", [10, 90], { "state.charges": [{ battery: house, percent: 10 }] }],
]);

function deviceParts(word: "fuseHolder" | "breaker"): Case[] {
  const plan = vanWithDevice(word === "breaker" ? breaker : fuseHolder);
  const given: Values = {
    "feed.protect.letThroughA2s": 1_000,
    ...(word === "fuseHolder" && { "device.family": "ISO 8820-3 Type C" }),
  };
  return at(plan, "device", word, [
    ["ratingA", finding("protection/below-load"), [30, 5]],
    ["on", "figures", [plan.plus.stud, plan.house.positive]],
    ["interruptingA", finding("protection/interrupting"), [20_000, 20]],
    ["ratedV", finding("protection/voltage-rating"), [58, 5]],
    ["terminalC", finding("conductor/ampacity"), [105, 60], { "pumpFeed.gauge": 14 }],
    ["ambientC", finding("protection/headroom"), [20, 70], { "device.ratingA": 35 }],
    ["milliohm", "figures", [0, 10]],
    ["continuous", finding("protection/headroom"), yes],
    ...inShort("device.", "", given),
  ]);
}

/**
 * A load and a motor: whether they run for hours also counts for the fuse or breaker that they have for themselves. `shared`: they are
 * behind the main fuse alone.
 */
function loadCases(plan: Plan, name: string, word: "load" | "motor", shared: Values): Case[] {
  const feed = name === "pump" ? { "pumpFeed.lengthM": 6 } : { "heaterFeed.oneWayM": 6 };
  return at(plan, name, word, [
    ["minimumV", finding("scenario/device-below-minimum"), [1, 12]],
    ["maximumV", overVoltage, [32, 11.9]],
    ["critical", finding("conductor/voltage-drop"), yes, feed],
    ["purpose", finding("protection/shared-alarm"), [undefined, "alarm"], shared],
    ["continuous", finding("protection/headroom"), yes],
    ["dropLimitPercent", finding("conductor/voltage-drop"), [20, 0.5]],
  ]);
}

const withBreaker = vanWithDevice(breaker);

const parts: readonly Case[] = [
  ...ofEveryPart("battery", "house", "battery/discharge-current", { "house.maxDischargeA": 1 }),
  ...at(made, "house", "battery", [
    ["chemistry", "figures", ["LiFePO4", "AGM"]],
    ["nominalV", "figures", [12, 24]],
    ["capacityAh", "figures", [100, 300]],
    ["internalMilliohm", "figures", [2, 9]],
    ["shortCircuitA", finding("protection/interrupting"), [2_000, 30_000]],
    ["maxDischargeA", finding("battery/discharge-current"), [500, 50]],
    ["maxChargeA", finding("battery/charge-current"), [500, 5]],
    ["lowestC", finding("battery/cold-charge"), [5, -10]],
    ["chargeCutOffC", finding("battery/cold-charge"), [-20, 2], { "house.lowestC": -10 }],
  ]),
  ...ofEveryPart("busBar", "plus", "bus/rating", { "plus.ratedA": 5 }),
  ...at(made, "plus", "busBar", [
    ["ratedA", finding("bus/rating"), [400, 20]],
    ["studs", finding("bus/studs"), [20, 2]],
    ["terminalC", finding("inverter/supply"), [105, 60], { "switchToBus.gauge": 2 }],
    ["side", "refused", ["positive", "negative"]],
  ]),
  ...ofEveryPart("fusePanel", "panel", "panel/rating", { "panel.ratedA": 5 }),
  ...at(made, "panel", "fusePanel", [
    ["positions", finding("panel/rating"), [6, 1]],
    ["ratedA", finding("panel/rating"), [100, 5]],
    ["branchRatedA", finding("panel/rating"), [30, 5]],
    ["branchFamily", finding("protection/standard-rating"), ["ISO 8820-3 Type C", "ISO 8820-5 Type SF 51"]],
    ["terminalC", finding("conductor/ampacity"), [105, 60], { "lamp.gauge": 18, "lamp.load": 14 }],
    ["negativeBus", "refused", [true, false]],
    ["testedBehind", finding("protection/interrupting"), [undefined, tested]],
    [
      "testedBehind.family",
      finding("protection/interrupting"),
      [family, "ISO 8820-5 Type SF 30"],
      { "panel.testedBehind": tested },
    ],
    ["testedBehind.ratingA", finding("protection/interrupting"), [200, 2], { "panel.testedBehind": tested }],
    [
      "testedBehind.interruptingA",
      finding("protection/interrupting"),
      [20_000, 2],
      { "panel.testedBehind": tested },
    ],
    ["branchTermination", "documents", [undefined, "#8"]],
    ["branchTorqueNm", "documents", [undefined, 1.4], { "panel.branchTermination": "#8" }],
    ...largestConductor("branch"),
  ]),
  ...ofEveryPart("disconnect", "mainSwitch", "disconnect/rating", { "mainSwitch.ratedA": 5 }),
  ...at(made, "mainSwitch", "disconnect", [
    ["ratedA", finding("disconnect/rating"), [500, 5]],
    ["momentaryA", finding("disconnect/rating"), [500, 6], { "mainSwitch.ratedA": 5 }],
    ["terminalC", finding("inverter/supply"), [105, 60], { "switchToBus.gauge": 2 }],
  ]),
  ...ofEveryPart("selectorSwitch", "selector", "disconnect/rating", { "selector.ratedA": 5 }),
  ...at(made, "selector", "selectorSwitch", [
    ["ratedA", finding("disconnect/rating"), [500, 5]],
    ["momentaryA", finding("disconnect/rating"), [500, 150], { "selector.ratedA": 100 }],
    ["terminalC", "figures", [105, 60]],
  ]),
  ...ofEveryPart("relay", "combiner", "disconnect/rating", { "combiner.ratedA": 5 }),
  ...at(made, "combiner", "relay", [
    ["ratedA", finding("disconnect/rating"), [500, 5]],
    ["momentaryA", "documents", [undefined, 400]],
    ["terminalC", finding("protection/unprotected-path"), [105, 60], { "toPlug.gauge": 10 }],
  ]),
  ...ofEveryPart("fuseHolder", "mainFuse", "protection/below-load", { "mainFuse.ratingA": 10 }),
  ...deviceParts("fuseHolder"),
  ...at(made, "mainFuse", "fuseHolder", [
    [
      "family",
      finding("protection/interrupting"),
      ["UL 248-15 Class T", "ISO 8820-5 Type SF 30"],
      { "mainFuse.interruptingA": undefined },
    ],
    ["holderRatedA", finding("protection/holder-rating"), [undefined, 30]],
  ]),
  ...ofEveryPart("breaker", "pumpBreaker", "protection/below-load", { "pumpBreaker.ratingA": 2 }),
  ...deviceParts("breaker"),
  ...ofEveryPart("shunt", "monitor", "part/rating", { "monitor.ratedA": 5 }),
  ...at(made, "monitor", "shunt", [
    ["ratedA", finding("part/rating"), [500, 5]],
    ["ratedMV", "figures", [50, 500]],
  ]),
  ...ofEveryPart("inverter", "kettle", "inverter/surge", { "kettle.surgeW": 90_000 }),
  ...at(made, "kettle", "inverter", [
    ["continuousW", finding("inverter/supply"), [500, 5_000], { "kettle.surgeW": undefined }],
    ["surgeW", finding("inverter/surge"), [900, 90_000]],
    ["maxFuseA", permittedFuse, [200, 20]],
    ["loadW", "figures", [100, 700]],
    ["idleW", "figures", [1, 90]],
    ["efficiencyPercent", "figures", [95, 50]],
    ["cutOffV", finding("inverter/surge"), [8, 12.6]],
    ["maximumV", overVoltage, [32, 11.9]],
  ]),
  ...ofEveryPart("dcDcCharger", "booster", "battery/charging-voltage", { "booster.outputV": 20 }),
  ...at(made, "booster", "dcDcCharger", [
    ["outputA", finding("charger/input-current"), [20, 200]],
    ["outputV", finding("battery/charging-voltage"), [14.4, 20]],
    ["efficiencyPercent", "figures", [95, 50]],
    ["inputMaxA", "figures", [100, 5]],
    ["inputMinV", finding("charger/input-current"), [5, 12.9]],
    ["inputMaxV", overVoltage, [32, 11.9]],
    ["isolated", "figures", yes],
    ["maxFuseA", permittedFuse, [100, 5]],
    ["runs", "figures", ["with the engine", "always"]],
  ]),
  ...ofEveryPart("alternator", "engine", "alternator/overload", {
    "house.maxChargeA": undefined,
    "booster.outputA": 200,
  }),
  ...at(made, "engine", "alternator", [
    ["ratedA", finding("alternator/overload"), [200, 20]],
    ["outputV", finding("battery/charging-voltage"), [14.4, 20]],
    ["continuousPercent", finding("alternator/overload"), [100, 10]],
    ["selfLimiting", finding("protection/both-ends"), yes],
  ]),
  ...ofEveryPart("shoreCharger", "mains", "battery/charging-voltage", { "mains.outputV": 20 }),
  ...at(made, "mains", "shoreCharger", [
    ["outputA", finding("protection/below-load"), [30, 200]],
    ["maxFuseA", permittedFuse, [100, 5]],
    ["outputV", finding("battery/charging-voltage"), [14.4, 20]],
  ]),
  ...ofEveryPart("solarArray", "modules", "solar/string-protection", { "modules.parallel": 4 }),
  ...at(made, "modules", "solarArray", [
    ["openCircuitV", finding("solar/cold-voltage"), [22, 50], { "modules.lowestC": -10 }],
    ["shortCircuitA", finding("solar/conductor"), [10, 90]],
    ["maxPowerV", finding("solar/array-voltage"), [18, 3]],
    ["maxPowerA", "figures", [9, 5]],
    [
      "openCircuitPercentPerC",
      finding("solar/cold-voltage"),
      [-0.1, -2],
      { "modules.lowestC": -30, "sun.maxInputV": 55 },
    ],
    ["lowestC", finding("solar/cold-voltage"), [20, -40], { "sun.maxInputV": 47 }],
    ["series", finding("solar/cold-voltage"), [1, 9], { "modules.lowestC": -10 }],
    ["parallel", finding("solar/string-protection"), [1, 4]],
    ["maxSeriesFuseA", finding("solar/string-protection"), [20, 10], { "modules.parallel": 3 }],
    ["stringFuseA", finding("solar/string-protection"), [undefined, 15], { "modules.parallel": 3 }],
  ]),
  ...ofEveryPart("solarController", "sun", "battery/charging-voltage", { "sun.outputV": 20 }),
  ...at(made, "sun", "solarController", [
    ["maxInputV", finding("solar/cold-voltage"), [100, 20], { "modules.lowestC": -10 }],
    ["outputA", "figures", [50, 5]],
    ["outputV", finding("battery/charging-voltage"), [14.4, 20]],
    ["tracking", "figures", yes],
    ["maxFuseA", permittedFuse, [100, 5]],
    ["efficiencyPercent", "figures", [99, 50]],
  ]),
  ...ofEveryPart("chassis", "block", "network/unconnected", {}, vanWithMetal()),
  ...at(made, "block", "chassis", [["milliohm", "figures", [0, 100]]]),
  ...ofEveryPart("load", "heater", "scenario/device-below-minimum", { "heater.minimumV": 12 }),
  ...at(made, "heater", "load", [
    ["currentA", finding("protection/below-load"), [5, 50]],
    ["powerW", finding("protection/below-load"), [50, 500], { "heater.currentA": undefined }],
    ["resistanceOhm", finding("protection/below-load"), [5, 0.3], { "heater.currentA": undefined }],
    ["maxFuseA", permittedFuse, [50, 5]],
  ]),
  ...ofEveryPart("motor", "pump", "scenario/device-below-minimum", { "pump.minimumV": 12 }),
  ...at(made, "pump", "motor", [
    ["runningA", finding("protection/below-load"), [5, 50], { "pump.startingA": 60 }],
    ["maxFuseA", permittedFuse, [50, 5]],
    [
      "startingA",
      finding("protection/starting-current"),
      [10, 500],
      { "pumpBreaker.openingTimes": [{ atPercent: 200, withinS: 0.1 }] },
    ],
    [
      "startingS",
      finding("protection/starting-current"),
      [0.1, 60],
      { "pumpBreaker.openingTimes": [{ atPercent: 200, afterS: 1, withinS: 50 }], "pump.startingA": 40 },
    ],
  ]),
  ...loadCases(small, "heater", "load", {
    ...{ "lamp.protect": undefined, "heaterFeed.protect": undefined },
  }),
  ...loadCases(withBreaker, "pump", "motor", {
    ...{ "pumpFeed.from": withBreaker.plus.stud, "heaterFeed.protect": undefined },
  }),
  ...ofEveryPart("starterMotor", "starter", "scenario/device-below-minimum", { "starter.minimumV": 12 }),
  ...at(made, "starter", "starterMotor", [
    ["crankingA", "figures", [100, 400]],
    ["minimumV", finding("scenario/device-below-minimum"), [6, 12]],
    ["maximumV", overVoltage, [32, 11.9]],
  ]),
  ...ofEveryPart("part", "plug", "part/rating", { "plug.ratedA": 5 }),
  ...at(made, "plug", "part", [
    [
      "terminals",
      "refused",
      [
        ["in", "out"],
        ["in", "way"],
      ],
    ],
    ["joins", "figures", [[{ between: ["in", "out"] }], []]],
    [
      "joins.0.between",
      "refused",
      [
        ["in", "out"],
        ["in", "in"],
      ],
    ],
    ["joins.0.milliohm", "figures", [1, 50]],
    ["ratedA", finding("part/rating"), [60, 5]],
  ]),
];

/** A property may count in one of them and be forgotten in another. */
export const kindsOfCircuit: Readonly<Record<string, readonly Case[]>> = {
  alone: [...circuitAlone, ...useRefused(alone(), "lamp"), ...placeRefused(alone(), "lamp", true)],
  "in a network, with a load of its own": [...circuitWithLoad, ...useOfCircuit, ...placementOfCircuit],
  "in a network, to a part": [
    ...circuitToPart,
    ...useRefused(small, "heaterFeed"),
    ...placeRefused(small, "stoveFeed", false),
  ],
};

export const cases: readonly Case[] = [
  ...Object.values(kindsOfCircuit).flat(),
  ...cables,
  ...builds,
  ...scenarios,
  ...parts,
  ...energyCases,
  ...placementCases,
];
