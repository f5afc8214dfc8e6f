import { testRule } from "../rule.tester.ts";
import { permittedFuse } from "./permitted-fuse.ts";

// The largest fuse is the maker's, as the plan states it. 33 CFR 183.425 Table 5, 75 °C: 8 AWG carries 65 A, 4 AWG 125 A.
const heater = { load: 20, oneWayFt: 6, gauge: 8, protect: 50 };
const onBus = (device: string, supply: string) => `
  build({ insulationC: 75 });
  const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 100, shortCircuitA: 800 });
  const bus = busBar({ name: "bus bar" });
  cable({ name: "feed", from: bank.positive, to: bus.stud, lengthFt: 3, gauge: 4,
    protect: { ratingA: 100, family: "UL 248-15 Class T", distanceIn: 6, interruptingA: 20000 } });
  circuit({ name: "Lamp", from: bus.stud, returnTo: bank.negative, load: 4, oneWayFt: 9, gauge: 14, protect: 5 });
  const device = ${device};
  ${supply}`;
const inverterOf = (more: string) => `inverter({ name: "kettle", continuousW: 300, ${more} })`;
const leads = (more: string) =>
  `circuit({ name: "kettle leads", from: bus.stud, returnTo: bank.negative, to: device, oneWayFt: 3, gauge: 8, ${more} });`;

testRule(permittedFuse, [
  { name: "no maker's figure", circuits: [heater], finds: "nothing" },
  { name: "exactly the largest", circuits: [{ ...heater, maxFuseA: 50 }], finds: "nothing" },
  {
    name: "above it: the nearest rating up to it",
    circuits: [{ ...heater, maxFuseA: 40 }],
    finds: [
      {
        subject: "Heater",
        on: "protect",
        severity: "warning",
        message:
          "The 50 A fuse is above 40 A, the largest that the maker of its load permits: use a 40 A fuse.",
        fixes: [{ title: "Use a 40 A fuse", gives: { protect: 40 } }],
      },
    ],
  },
  {
    name: "the maker's largest fuse carries the load, at the cost of headroom",
    circuits: [{ ...heater, load: 38, oneWayFt: 4, maxFuseA: 40 }],
    finds: [
      {
        on: "protect",
        message: "The 50 A fuse is above 40 A",
        fixes: [{ title: "Use a 40 A fuse", gives: { protect: 40 } }],
      },
    ],
  },
  {
    name: "it does not carry the load: no rating is right",
    circuits: [{ ...heater, load: 38, oneWayFt: 4, maxFuseA: 30 }],
    finds: [
      {
        on: "protect",
        message:
          "The 50 A fuse is above 30 A, the largest that the maker of its load permits: no rating up to that carries its load; ask the maker which fuse is right.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a part within its limit",
    plan: onBus(inverterOf("maxFuseA: 60"), leads("protect: 50")),
    finds: "nothing",
  },
  {
    name: "a part, with a fuse in its leads",
    plan: onBus(inverterOf("maxFuseA: 40"), leads("protect: 60")),
    finds: [
      {
        subject: "kettle leads",
        record: "kettle leads",
        on: "protect",
        message:
          "The 60 A fuse is above 40 A, the largest that the maker of the inverter kettle permits: use a 40 A fuse.",
        fixes: [{ title: "Use a 40 A fuse", gives: { protect: 40 } }],
      },
    ],
  },
  {
    name: "a part behind the main fuse alone: a fuse of its own",
    plan: onBus(inverterOf("maxFuseA: 40"), leads("").replace("gauge: 8", "gauge: 4")),
    finds: [
      {
        subject: "kettle",
        on: "maxFuseA",
        message:
          "The 100 A fuse is above 40 A, the largest that the maker of the inverter kettle permits: add a 40 A fuse (ISO 8820-3 Type C) within 7 in of the bus bar.",
        fixes: [
          {
            title: "Add a 40 A fuse (ISO 8820-3 Type C) within 7 in of the bus bar",
            gives: { "kettle leads": { "protect.ratingA": 40 } },
          },
        ],
      },
    ],
  },
  {
    name: "a part behind a breaker of its own",
    plan: onBus(
      inverterOf("maxFuseA: 40"),
      `const trip = breaker({ name: "kettle breaker", ratingA: 60, on: bus.stud });
       circuit({ name: "kettle leads", from: trip.load, returnTo: bank.negative, to: device, oneWayFt: 3, gauge: 8 });`,
    ),
    finds: [
      {
        subject: "kettle breaker",
        on: "ratingA",
        message:
          "The 60 A breaker is above 40 A, the largest that the maker of the inverter kettle permits: use a 40 A breaker.",
        fixes: [{ title: "Use a 40 A breaker", gives: { ratingA: 40 } }],
      },
    ],
  },
  {
    name: "accepted with a reason",
    circuits: [
      { ...heater, maxFuseA: 40, accept: { "protection/permitted-fuse": "an inline fuse is inside" } },
    ],
    finds: [
      {
        on: "protect",
        accepted: "an inline fuse is inside",
        message: "The 50 A fuse is above 40 A",
        fixes: [{ title: "Use a 40 A fuse", gives: { protect: 40 } }],
      },
    ],
  },
]);
