import { testRule } from "../rule.tester.ts";
import { headroom } from "./headroom.ts";

// 125 % of a continuous load: NFPA 70, 210.20(A) and 215.3. For 40 A that is 50 A. In a hot place 1 / 0.70: common practice, no source.
testRule(headroom, [
  { name: "exactly 125 % of the load", circuits: [{}], finds: "nothing" },
  { name: "just above 125 % of the load", circuits: [{ load: 39.99 }], finds: "nothing" },
  {
    name: "just below 125 % of the load: 50 A over 40.01 A",
    circuits: [{ load: 40.01 }],
    finds: [
      {
        on: "protect",
        message:
          "The 50 A fuse is below 50.01 A, 125 % of a continuous load of 40 A (NFPA 70 210.20(A) and 215.3): use a 60 A fuse.",
        fixes: [{ title: "Use a 60 A fuse", gives: { protect: 60, gauge: 4 } }],
      },
    ],
  },
  {
    name: "between the load and 125 % of it",
    circuits: [{ protect: 45 }],
    finds: [
      {
        on: "protect",
        message:
          "The 45 A fuse is below 50 A, 125 % of a continuous load of 40 A (NFPA 70 210.20(A) and 215.3): use a 50 A fuse.",
        values: { loadA: 40, aimA: 50 },
        fixes: [{ title: "Use a 50 A fuse", gives: { protect: 50 } }],
      },
    ],
  },
  {
    name: "exactly the load",
    circuits: [{ protect: 40 }],
    finds: [
      {
        on: "protect",
        message: "The 40 A fuse is below 50 A",
        fixes: [{ title: "Use a 50 A fuse", gives: { protect: 50 } }],
      },
    ],
  },
  {
    name: "a place of 49.9 °C",
    circuits: [{ ambientC: 49.9, insulationC: 105, protect: 50 }],
    finds: "nothing",
  },
  {
    name: "a place of 50 °C: 40 A are more than 70 % of 57 A",
    circuits: [{ ambientC: 50, insulationC: 105, protect: { ratingA: 50, family: "circuit breaker" } }],
    finds: [
      {
        on: "protect.ratingA",
        message:
          "The 50 A breaker is below 57.1 A, 143 % of a continuous load of 40 A in a place of 50 °C (common practice, no source): use a 60 A breaker.",
        values: { hotC: 50 },
        fixes: [{ title: "Use a 60 A breaker", gives: { "protect.ratingA": 60 } }],
      },
    ],
  },
  {
    name: "a hot place, just 70 % of the rating",
    circuits: [{ ambientC: 65, insulationC: 105, load: 42, protect: 60 }],
    finds: "nothing",
  },
  {
    name: "a hot build, for minutes",
    build: { ambientC: 60, continuous: false },
    circuits: [{ insulationC: 105, protect: 50 }],
    finds: "nothing",
  },
  {
    name: "an engine space, which says nothing about the place of the fuse",
    circuits: [{ engineSpace: true, insulationC: 105, protect: 50 }],
    finds: "nothing",
  },
  {
    name: "a fuse holder between conductors of which one is in a cooler place",
    plan: hotHolder(60, 40),
    finds: "nothing",
  },
  {
    name: "a fuse in a cooler place than its hot conductor",
    circuits: [
      { ambientC: 65, insulationC: 105, load: 42, protect: { ratingA: 55, ambientC: 30, distanceIn: 5 } },
    ],
    finds: "nothing",
  },
  {
    name: "a fuse in a hot box, its conductor elsewhere",
    circuits: [{ load: 40, protect: { ratingA: 50, ambientC: 60 } }],
    finds: [
      {
        on: "protect.ratingA",
        message:
          "The 50 A fuse is below 57.1 A, 143 % of a continuous load of 40 A in a place of 60 °C (common practice, no source): use a 60 A fuse.",
        fixes: [{ title: "Use a 60 A fuse", gives: { "protect.ratingA": 60 } }],
      },
    ],
  },
  {
    name: "a fuse holder in a cooler place than both of its conductors",
    plan: hotHolder(60, 55, "ambientC: 40"),
    finds: "nothing",
  },
  {
    name: "a fuse holder with both conductors in a hot place",
    plan: hotHolder(60, 55),
    finds: [
      {
        subject: "main fuse",
        on: "ratingA",
        message: "The 20 A fuse is below 22.9 A, 143 % of a continuous load of 16 A in a place of 55 °C",
        fixes: [{ title: "Use a 25 A fuse", gives: { ratingA: 25 } }],
      },
    ],
  },
  { name: "below the load: said by another rule", circuits: [{ protect: 39.99 }], finds: "nothing" },
  {
    name: "a load that runs for minutes",
    circuits: [{ protect: 45, continuous: false }],
    finds: "nothing",
  },
  {
    name: "a build whose loads run for minutes",
    build: { continuous: false },
    circuits: [{ protect: 45 }],
    finds: "nothing",
  },
  {
    name: "739.2 W at 13.2 V are 56 A and ask for 70 A, whatever the computer makes of it",
    circuits: [{ load: undefined, loadW: 739.2, voltage: 13.2, protect: 70, oneWayFt: 5 }],
    finds: "nothing",
  },
  {
    name: "614.4 W at 12.8 V are 48 A and ask for 60 A, whatever the computer makes of it",
    circuits: [{ load: undefined, loadW: 614.4, voltage: 14, minimumV: 12.8, protect: 60, oneWayFt: 5 }],
    finds: "nothing",
  },
  {
    name: "0.1 + 0.2 A ask for 0.375 A, whatever the computer makes of it",
    circuits: [{ load: 0.1 + 0.2, protect: 0.375 }],
    finds: "nothing",
  },
  {
    name: "written as an object, of a family without 50 A",
    circuits: [{ protect: { ratingA: 45, family: "UL 248-15 Class T" }, load: 44 }],
    finds: [
      {
        on: "protect.ratingA",
        message: "The 45 A fuse is below 55 A, 125 % of a continuous load of 44 A",
        fixes: [
          {
            title: "Use a 60 A fuse",
            gives: { protect: { ratingA: 60, family: "UL 248-15 Class T" } },
          },
        ],
      },
    ],
  },
  {
    name: "a breaker is called one",
    circuits: [{ protect: { ratingA: 45, family: "circuit breaker" } }],
    finds: [
      {
        on: "protect.ratingA",
        message: "The 45 A breaker is below 50 A",
        fixes: [{ title: "Use a 50 A breaker", gives: { "protect.ratingA": 50 } }],
      },
    ],
  },
  {
    name: "the family has nothing greater",
    circuits: [{ load: 28, protect: { ratingA: 30, family: "ISO 8820-3 Type F" } }],
    finds: [
      {
        on: "protect.ratingA",
        message:
          "The 30 A fuse is below 35 A, 125 % of a continuous load of 28 A (NFPA 70 210.20(A) and 215.3): choose another family, this one is not made above 30 A (unconfirmed figure).",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "the conductor bears the better rating exactly",
    circuits: [{ gauge: 10, load: 32, oneWayFt: 5, protect: 35 }],
    finds: [
      {
        on: "protect",
        message: "The 35 A fuse is below 40 A",
        fixes: [{ title: "Use a 40 A fuse", gives: { gauge: 10, protect: 40 } }],
      },
    ],
  },
  {
    name: "the conductor bears no better rating: one fix changes both",
    circuits: [{ gauge: 10, load: 38, oneWayFt: 5, protect: 40 }],
    finds: [
      {
        on: "protect",
        message: "The 40 A fuse is below 47.5 A",
        fixes: [{ title: "Use 8 AWG with a 50 A fuse", gives: { gauge: 8, protect: 50 } }],
      },
    ],
  },
  {
    name: "in an engine space the conductor bears no better rating",
    circuits: [{ gauge: 8, load: 39, oneWayFt: 5, engineSpace: true, protect: 45 }],
    finds: [
      {
        on: "protect",
        message: "The 45 A fuse is below 48.8 A, 125 % of a continuous load of 39 A",
        fixes: [{ title: "Use 6 AWG with a 50 A fuse", gives: { gauge: 6, protect: 50 } }],
      },
    ],
  },
  {
    name: "two wires side by side",
    circuits: [{ gauge: 10, parallel: 2, load: 36, oneWayFt: 5, protect: 40 }],
    finds: [
      {
        on: "protect",
        message: "The 40 A fuse is below 45 A",
        fixes: [{ title: "Use a 45 A fuse", gives: { protect: 45, parallel: 2 } }],
      },
    ],
  },
  {
    name: "a metric conductor",
    circuits: [{ gauge: undefined, mm2: 10, oneWayFt: undefined, oneWayM: 2, protect: 45 }],
    finds: [
      {
        on: "protect",
        message: "The 45 A fuse is below 50 A",
        fixes: [{ title: "Use a 50 A fuse", gives: { protect: 50, mm2: 10 } }],
      },
    ],
  },
  {
    name: "the far end alone",
    circuits: [{ fedFromBothEnds: true, protectFarEnd: { ratingA: 45 } }],
    finds: [
      {
        on: "protectFarEnd.ratingA",
        message: "The 45 A fuse at the far end is below 50 A",
        fixes: [{ title: "Use a 50 A fuse at the far end", gives: { "protectFarEnd.ratingA": 50 } }],
      },
    ],
  },
  {
    name: "both ends, and the conductor bears no better rating",
    circuits: [{ gauge: 10, load: 38, oneWayFt: 5, fedFromBothEnds: true, protect: 40, protectFarEnd: 40 }],
    finds: [
      {
        on: "protect",
        message: "The 40 A fuse is below 47.5 A",
        fixes: [
          {
            title: "Use 8 AWG with a 50 A fuse and a 50 A fuse at the far end",
            gives: { gauge: 8, protect: 50, protectFarEnd: 50 },
          },
        ],
      },
      {
        on: "protectFarEnd",
        message: "The 40 A fuse at the far end is below 47.5 A",
        fixes: [
          {
            title: "Use 8 AWG with a 50 A fuse and a 50 A fuse at the far end",
            gives: { gauge: 8, protect: 50, protectFarEnd: 50 },
          },
        ],
      },
    ],
  },
  {
    name: "a place too hot for the insulation: no rating can be told",
    circuits: [{ protect: 45, ambientC: 75 }],
    finds: [
      {
        on: "protect",
        message:
          "The 45 A fuse is below 57.1 A, 143 % of a continuous load of 40 A in a place of 75 °C (common practice, no source): first choose insulation for this temperature.",
        fixes: "no fix",
      },
    ],
  },
  // 33 CFR 183.460(b): at most 120 A for this machine, and 125 % of its current are 125 A.
  {
    name: "a machine that does not limit itself: 120 % of its rating is the limit of another rule",
    plan: machine("selfLimiting: false", "protectFarEnd: 110"),
    finds: "nothing",
  },
  {
    name: "a holder on the terminal of such a machine",
    plan: machine("selfLimiting: false", "", "fuseHolder({ ratingA: 110, on: engine.positive })"),
    finds: "nothing",
  },
  {
    name: "a machine that limits itself has no such limit",
    plan: machine("selfLimiting: true", "protectFarEnd: 110"),
    finds: [
      {
        on: "protectFarEnd",
        message: "The 110 A fuse at the far end is below 125 A, 125 % of a continuous load of 100 A",
        fixes: [{ title: "Use a 125 A fuse at the far end", gives: { protectFarEnd: 125 } }],
      },
    ],
  },
  // NFPA 70, 215.3: 1.25 × 24 A + 1.00 × 140 A = 170 A.
  {
    name: "a feeder of lamps and a winch: only the lamps run for hours",
    plan: feeder("protect: 170", "continuous: false"),
    finds: "nothing",
  },
  {
    name: "just below 125 % of the lamps and 100 % of the winch",
    plan: feeder("protect: 169", "continuous: false"),
    finds: [
      {
        on: "protect",
        message:
          "The 169 A fuse is below 170 A, 125 % of a continuous load of 24 A and 100 % of the other 140 A (NFPA 70 210.20(A) and 215.3): use a 175 A fuse.",
        values: { loadA: 24, otherA: 140, aimA: 170 },
        fixes: [{ title: "Use a 175 A fuse", gives: { protect: 175 } }],
      },
    ],
  },
  {
    name: "the circuit of the winch states that it runs for minutes",
    plan: feeder("protect: 170", "", "continuous: false"),
    finds: "nothing",
  },
  {
    name: "a winch that runs for hours: 1.25 × 164 A = 205 A",
    plan: feeder("protect: 170", ""),
    finds: [
      {
        on: "protect",
        message: "The 170 A fuse is below 205 A, 125 % of a continuous load of 164 A (",
        fixes: [{ title: "Use a 225 A fuse", gives: { protect: 225 } }],
      },
    ],
  },
  {
    name: "the winch alone asks for no more than its current",
    plan: feeder(
      "protect: 140",
      "continuous: false",
      "",
      `scenario({ name: "hauling", on: [winch] }); scenario({ name: "night", on: [lamps] });`,
    ),
    finds: "nothing",
  },
  {
    name: "a holder on the battery carries the same feeder",
    plan: feeder("", "continuous: false", "", "", "fuseHolder({ ratingA: 169, on: bank.positive })"),
    finds: [
      {
        on: "ratingA",
        subject: "holder",
        message:
          "The 169 A fuse is below 170 A, 125 % of a continuous load of 24 A and 100 % of the other 140 A (",
        fixes: [{ title: "Use a 175 A fuse", gives: { ratingA: 175 } }],
      },
    ],
  },
  {
    name: "accepted with a reason",
    circuits: [{ protect: 45, accept: { "protection/headroom": "breaker marked for 100 % continuous" } }],
    finds: [
      {
        on: "protect",
        message: "The 45 A fuse is below 50 A",
        fixes: [{ title: "Use a 50 A fuse", gives: { protect: 50 } }],
        accepted: "breaker marked for 100 % continuous",
      },
    ],
  },
  {
    name: "in a panel position that takes no greater fuse: none is put in there",
    plan: `
      build({ insulationC: 105 });
      const bank = battery({ chemistry: "AGM", capacityAh: 400, internalMilliohm: 2 });
      const board = fusePanel({ name: "board", positions: 4, branchRatedA: 30, branchFamily: "UL 248-15 Class T" });
      cable({ name: "feeder", from: bank.positive, to: board.feed, lengthFt: 2, gauge: 2, protect: 125 });
      cable({ name: "back", from: board.negative, to: bank.negative, lengthFt: 2, gauge: 2 });
      circuit({ name: "oven", from: board.branch, load: 50, oneWayFt: 3, gauge: 6, protect: 60 });`,
    finds: [
      {
        subject: "oven",
        on: "protect",
        message:
          "The 60 A fuse is below 62.5 A, 125 % of a continuous load of 50 A (NFPA 70 210.20(A) and 215.3): a 70 A fuse would do, but its place permits 30 A: put it where a greater one is permitted.",
        fixes: "no fix",
      },
    ],
  },
  {
    // 125 % of 139 A asks for 175 A; 4 AWG of 105 °C may carry 160 A (33 CFR 183.425, Table 5), and 2 AWG 210 A.
    name: "its current flows on through a conductor that is too thin for the rating: that one becomes thicker with it",
    plan: `
      build({ insulationC: 105 });
      const bank = battery({ chemistry: "AGM", capacityAh: 400, internalMilliohm: 2 });
      const off = disconnect({ ratedA: 250 });
      const joint = busBar({ name: "joint", side: "negative" });
      cable({ name: "feeder", from: bank.positive, to: off.line, lengthFt: 2, gauge: 4, protect: 150 });
      cable({ name: "back", from: joint.stud, to: bank.negative, lengthFt: 2, gauge: 4 });
      circuit({ name: "oven", from: off.load, returnTo: joint.stud, load: 139, oneWayFt: 3, gauge: 4 });`,
    finds: [
      {
        subject: "feeder",
        on: "protect",
        message:
          "The 150 A fuse is below 174 A, 125 % of a continuous load of 139 A (NFPA 70 210.20(A) and 215.3): use 2 AWG with a 175 A fuse, and 2 AWG for oven and back.",
        fixes: [
          {
            title: "Use 2 AWG with a 175 A fuse, and 2 AWG for oven and back",
            gives: { feeder: { gauge: 2, protect: 175 }, oven: { gauge: 2 }, back: { gauge: 2 } },
          },
        ],
      },
    ],
  },
  {
    name: "a load of constant current is no estimate, beside one of constant power on a battery of the usual resistance",
    plan: `
      build({ insulationC: 75 });
      const bank = battery({ chemistry: "AGM", capacityAh: 200 });
      circuit({ name: "heater", from: bank.positive, returnTo: bank.negative, load: 9, oneWayFt: 3, gauge: 12, protect: 10 });
      circuit({ name: "screen", from: bank.positive, returnTo: bank.negative, loadW: 30, oneWayFt: 3, gauge: 12, protect: 10 });`,
    finds: [
      {
        subject: "heater",
        on: "protect",
        message: "The 10 A fuse is below 11.3 A, 125 % of a continuous load of 9 A (NFPA 70",
        fixes: [{ title: "Use a 15 A fuse", gives: { protect: 15 } }],
      },
    ],
  },
  {
    // 125 % of 40 A asks for 50 A; 10 AWG of 75 °C behind the same fuse may carry 40 A (33 CFR 183.425, Table 5).
    name: "a rating that would suit this run is above what a thinner conductor on the same device may carry",
    plan: `
      build({ insulationC: 75 });
      const bank = battery({ chemistry: "AGM", capacityAh: 400, internalMilliohm: 2 });
      const plus = part({ name: "joint", terminals: ["in", "out"], joins: [{ between: ["in", "out"] }] });
      cable({ name: "feeder", from: bank.positive, to: plus.in, lengthFt: 2, gauge: 6, protect: 40 });
      circuit({ name: "heater", from: plus.out, returnTo: bank.negative, load: 39, oneWayFt: 3, gauge: 6, protect: 50 });
      circuit({ name: "lamp", from: plus.out, returnTo: bank.negative, load: 1, oneWayFt: 3, gauge: 10 });`,
    finds: [
      {
        subject: "feeder",
        on: "protect",
        message:
          "The 40 A fuse is below 50 A, 125 % of a continuous load of 40 A (NFPA 70 210.20(A) and 215.3): a 50 A fuse would do here, but the device also protects thinner conductors: use thicker ones there too, or a device elsewhere.",
        fixes: "no fix",
      },
    ],
  },
]);

/** A machine of 100 A that charges a large bank with all it gives. */
function machine(properties: string, cableProtection: string, holder = ""): string {
  return `
    build({ insulationC: 105 });
    const bank = battery({ chemistry: "AGM", capacityAh: 800, internalMilliohm: 2 });
    const engine = alternator({ ratedA: 100, ${properties} });
    ${holder === "" ? "" : `const holder = ${holder};`}
    cable({ name: "charging", from: ${holder === "" ? "engine.positive" : "holder.load"}, to: bank.positive, lengthFt: 4, gauge: "2/0", ${cableProtection} });
    cable({ name: "charging return", from: engine.negative, to: bank.negative, lengthFt: 4, gauge: "2/0" });`;
}

/** A cable that feeds lamps of 24 A and a winch of 140 A. */
function feeder(protection: string, ofWinch: string, ofItsCircuit = "", scenarios = "", holder = ""): string {
  return `
    build({ insulationC: 105 });
    const bank = battery({ chemistry: "AGM", capacityAh: 400, internalMilliohm: 2 });
    ${holder === "" ? "" : `const holder = ${holder};`}
    const plus = busBar({});
    cable({ name: "feeder", from: ${holder === "" ? "bank.positive" : "holder.load"}, to: plus.stud, lengthFt: 2, gauge: "1/0", ${protection} });
    const winch = motor({ runningA: 140, startingA: 200, ${ofWinch} });
    const common = { from: plus.stud, returnTo: bank.negative };
    circuit({ ...common, name: "hauling", to: winch, oneWayFt: 4, gauge: "1/0", protect: 175, ${ofItsCircuit} });
    const lamps = circuit({ ...common, name: "lamps", load: 24, oneWayFt: 4, gauge: 10, protect: 30 });
    ${scenarios}`;
}

function hotHolder(leadC: number, pumpC: number, own = ""): string {
  return `
    build({ insulationC: 105 });
    const house = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 5 });
    const main = fuseHolder({ name: "main fuse", ratingA: 20, ${own} });
    cable({ from: house.positive, to: main.line, lengthFt: 0.5, gauge: 8, ambientC: ${leadC} });
    circuit({ name: "pump", from: main.load, returnTo: house.negative, load: 16, oneWayFt: 3, gauge: 8, ambientC: ${pumpC} });`;
}
