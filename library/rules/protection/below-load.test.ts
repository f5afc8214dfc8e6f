import { testRule } from "../rule.tester.ts";
import { belowLoad } from "./below-load.ts";

testRule(belowLoad, [
  {
    name: "exactly the load; how close that is, is another rule's business",
    circuits: [{ protect: 40 }],
    finds: "nothing",
  },
  {
    name: "just below the load",
    circuits: [{ protect: 39.99 }],
    finds: [
      {
        on: "protect",
        message:
          "The 39.99 A fuse is below the load of 40 A and would blow in ordinary use: use a 50 A fuse.",
        values: { loadA: 40 },
        fixes: [{ title: "Use a 50 A fuse", gives: { protect: 50, gauge: 4 } }],
      },
    ],
  },
  {
    name: "just above the load",
    circuits: [{ load: 39.99, protect: 40 }],
    finds: "nothing",
  },
  {
    name: "far below the load",
    circuits: [{ protect: 5 }],
    finds: [
      {
        on: "protect",
        message: "The 5 A fuse is below the load of 40 A",
        fixes: [{ title: "Use a 50 A fuse", gives: { protect: 50 } }],
      },
    ],
  },
  {
    name: "0.1 + 0.2 A behind 0.3 A is no overload, whatever the computer makes of it",
    circuits: [{ load: 0.1 + 0.2, protect: 0.3 }],
    finds: "nothing",
  },
  {
    name: "739.2 W at 13.2 V are 56 A, whatever the computer makes of it",
    circuits: [{ load: undefined, loadW: 739.2, voltage: 14, minimumV: 13.2, protect: 56, oneWayFt: 5 }],
    finds: "nothing",
  },
  {
    name: "a load that runs for minutes must be carried too, without headroom",
    circuits: [{ protect: 35, continuous: false }],
    finds: [
      {
        on: "protect",
        message: "The 35 A fuse is below the load of 40 A",
        fixes: [{ title: "Use a 40 A fuse", gives: { protect: 40 } }],
      },
    ],
  },
  {
    name: "watts at the least voltage of the device: 480 W at 10 V are 48 A",
    circuits: [{ load: undefined, loadW: 480, minimumV: 10, oneWayFt: 5, protect: 45 }],
    finds: [
      {
        on: "protect",
        message: "The 45 A fuse is below the load of 48 A",
        fixes: [{ title: "Use a 60 A fuse", gives: { protect: 60, loadW: 480 } }],
      },
    ],
  },
  {
    name: "written as an object, it stays one; a breaker trips",
    circuits: [{ protect: { ratingA: 30, family: "circuit breaker", distanceIn: 5 } }],
    finds: [
      {
        on: "protect.ratingA",
        message:
          "The 30 A breaker is below the load of 40 A and would trip in ordinary use: use a 50 A breaker.",
        fixes: [
          {
            title: "Use a 50 A breaker",
            gives: { protect: { ratingA: 50, family: "circuit breaker", distanceIn: 5 } },
          },
        ],
      },
    ],
  },
  {
    name: "the family is not made as great as this load needs",
    circuits: [{ protect: { ratingA: 30, family: "ISO 8820-3 Type F" } }],
    finds: [
      {
        on: "protect.ratingA",
        message:
          "The 30 A fuse is below the load of 40 A and would blow in ordinary use: choose another family, this one is not made above 30 A (unconfirmed figure).",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "the family's next rating is above the conductor: one fix changes both",
    circuits: [{ gauge: 6, load: 65, oneWayFt: 5, protect: { ratingA: 60, family: "ISO 8820-3 Type E" } }],
    finds: [
      {
        on: "protect.ratingA",
        message: "The 60 A fuse is below the load of 65 A",
        fixes: [{ title: "Use 4 AWG with a 100 A fuse", gives: { gauge: 4, "protect.ratingA": 100 } }],
      },
    ],
  },
  {
    name: "no rating fits between load and conductor: one fix changes both",
    circuits: [{ gauge: 10, load: 38, oneWayFt: 5, protect: 30 }],
    finds: [
      {
        on: "protect",
        message: "The 30 A fuse is below the load of 38 A",
        fixes: [{ title: "Use 8 AWG with a 50 A fuse", gives: { gauge: 8, protect: 50 } }],
      },
    ],
  },
  {
    name: "the conductor is too thin for the load as well: the same fix as for the conductor",
    circuits: [{ gauge: 12, load: 30, oneWayFt: 5, protect: 20 }],
    finds: [
      {
        on: "protect",
        message: "The 20 A fuse is below the load of 30 A",
        fixes: [{ title: "Use 10 AWG with a 40 A fuse", gives: { gauge: 10, protect: 40 } }],
      },
    ],
  },
  {
    name: "in an engine space",
    circuits: [{ gauge: 8, load: 39, oneWayFt: 5, engineSpace: true, protect: 35 }],
    finds: [
      {
        on: "protect",
        message: "The 35 A fuse is below the load of 39 A",
        fixes: [{ title: "Use 6 AWG with a 50 A fuse", gives: { gauge: 6, protect: 50 } }],
      },
    ],
  },
  {
    name: "two wires side by side share one fuse and one load",
    circuits: [{ gauge: 10, parallel: 2, load: 36, oneWayFt: 5, protect: 35 }],
    finds: [
      {
        on: "protect",
        message: "The 35 A fuse is below the load of 36 A",
        fixes: [{ title: "Use a 45 A fuse", gives: { protect: 45, gauge: 10 } }],
      },
    ],
  },
  {
    name: "a metric conductor",
    circuits: [{ gauge: undefined, mm2: 10, oneWayFt: undefined, oneWayM: 2, protect: 30 }],
    finds: [
      {
        on: "protect",
        message: "The 30 A fuse is below the load of 40 A",
        fixes: [{ title: "Use a 50 A fuse", gives: { protect: 50, mm2: 10 } }],
      },
    ],
  },
  {
    name: "the far end alone",
    circuits: [{ fedFromBothEnds: true, protectFarEnd: 30 }],
    finds: [
      {
        on: "protectFarEnd",
        message:
          "The 30 A fuse at the far end is below the load of 40 A and would blow in ordinary use: use a 50 A fuse at the far end.",
        fixes: [{ title: "Use a 50 A fuse at the far end", gives: { protect: 50, protectFarEnd: 50 } }],
      },
    ],
  },
  {
    name: "both ends, each with its own family",
    circuits: [
      {
        fedFromBothEnds: true,
        protect: { ratingA: 30, family: "circuit breaker" },
        protectFarEnd: { ratingA: 30, family: "ISO 8820-5 Type SF 51" },
      },
    ],
    finds: [
      {
        on: "protect.ratingA",
        message: "The 30 A breaker is below the load of 40 A",
        fixes: [
          { title: "Use a 50 A breaker with a 60 A fuse at the far end", gives: { "protect.ratingA": 50 } },
        ],
      },
      {
        on: "protectFarEnd.ratingA",
        message: "The 30 A fuse at the far end is below the load of 40 A",
        fixes: [
          {
            title: "Use a 50 A breaker with a 60 A fuse at the far end",
            gives: { "protectFarEnd.ratingA": 60 },
          },
        ],
      },
    ],
  },
  {
    name: "a place too hot for the insulation: no rating can be told",
    circuits: [{ protect: 30, ambientC: 75 }],
    finds: [
      {
        on: "protect",
        message:
          "The 30 A fuse is below the load of 40 A and would blow in ordinary use: first choose insulation for this temperature.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "accepted with a reason",
    circuits: [{ protect: 30, accept: { "protection/below-load": "the pump starts against an open valve" } }],
    finds: [
      {
        on: "protect",
        message: "The 30 A fuse is below the load of 40 A",
        fixes: [{ title: "Use a 50 A fuse", gives: { protect: 50 } }],
        accepted: "the pump starts against an open valve",
      },
    ],
  },
  {
    name: "a device of its own whose conductors are the thickest that are made",
    plan: `build({ insulationC: 75 });
      const house = battery({ chemistry: "AGM", capacityAh: 400, internalMilliohm: 2 });
      const main = fuseHolder({ ratingA: 300, family: "UL 248-15 Class T", on: house.positive });
      circuit({ name: "heater", from: main.load, returnTo: house.negative, load: 305, oneWayFt: 3, gauge: "4/0" });`,
    finds: [
      {
        subject: "main",
        on: "ratingA",
        message:
          "The 300 A fuse is below the load of 305 A and would blow in ordinary use: no standard rating suits both its load and its conductors, and none thicker are made: split the load, or set parallel.",
        fixes: "no fix",
      },
    ],
  },
  {
    // 33 CFR 183.425, Table 5, 75 °C: 8 AWG 65 A, 6 AWG 95 A; 125 % of 50 A asks for 70 A.
    name: "a breaker of its own whose cable and return are too thin for the rating that its load asks for",
    plan: `build({ insulationC: 75 });
      const house = battery({ chemistry: "AGM", capacityAh: 400, internalMilliohm: 2 });
      const bow = breaker({ name: "bow breaker", ratingA: 40, on: house.positive });
      const pull = motor({ name: "bow motor", runningA: 50, startingA: 70 });
      cable({ name: "bow plus", from: bow.load, to: pull.positive, lengthFt: 8, gauge: 8 });
      cable({ name: "bow minus", from: pull.negative, to: house.negative, lengthFt: 8, gauge: 8 });`,
    finds: [
      {
        subject: "bow breaker",
        on: "ratingA",
        message:
          "The 40 A breaker is below the load of 50 A and would trip in ordinary use: use a 70 A breaker with 6 AWG for bow plus and bow minus.",
        fixes: [
          {
            title: "Use a 70 A breaker with 6 AWG for bow plus and bow minus",
            gives: { ratingA: 70, "bow plus": { gauge: 6 }, "bow minus": { gauge: 6 } },
          },
        ],
      },
    ],
  },
]);
