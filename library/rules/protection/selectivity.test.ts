import { testRule } from "../rule.tester.ts";
import { protectionSelectivity } from "./selectivity.ts";

// 12.85 V / (12.85 V / 900 A + 1.21 mΩ in 3 ft of 6 AWG) = 830 A remain at the bus bar for a fault behind a branch's fuse.
const twoBranches = (main: string, branch: string, second = true) => `
  build({ insulationC: 75 });
  const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 100, shortCircuitA: 900 });
  const bus = busBar({ name: "bus bar" });
  cable({ name: "feed", from: bank.positive, to: bus.stud, lengthFt: 3, gauge: 6, protect: ${main} });
  const fromBus = { from: bus.stud, returnTo: bank.negative, oneWayFt: 6 };
  circuit({ ...fromBus, name: "Pump", load: 20, gauge: 6, protect: ${branch} });
  ${second ? 'circuit({ ...fromBus, name: "Lamp", load: 2, gauge: 14, protect: 5 });' : ""}
`;
/** Each of the two carries half of the current of a fault behind the bus bar. */
const twoBatteries = (branchA: number) => `
  build({ insulationC: 75 });
  const bus = busBar({ name: "bus bar" });
  const back = busBar({ name: "negative bus" });
  for (const name of ["left", "right"]) {
    const half = battery({ name, chemistry: "AGM", capacityAh: 100, shortCircuitA: 900 });
    cable({ name: name + " feed", from: half.positive, to: bus.stud, lengthFt: 2, gauge: 2, protect: 60 });
    cable({ name: name + " return", from: half.negative, to: back.stud, lengthFt: 2, gauge: 2 });
  }
  const fromBus = { from: bus.stud, returnTo: back.stud, oneWayFt: 3 };
  circuit({ ...fromBus, name: "Winch", load: 80, gauge: 2, protect: ${branchA} });
  circuit({ ...fromBus, name: "Lamp", load: 2, gauge: 14, protect: 5 });
`;
const strip = (ratingA: number) => `{ ratingA: ${ratingA}, family: "ISO 8820-5 Type SF 30" }`;
const blade = (ratingA: number) => `{ ratingA: ${ratingA}, family: "ISO 8820-3 Type C" }`;

testRule(protectionSelectivity, [
  { name: "a lone circuit", circuits: [{}], finds: "nothing" },
  { name: "the ratings are apart", plan: twoBranches("41", "40"), finds: "nothing" },
  {
    name: "the same rating twice",
    plan: twoBranches("40", "40"),
    finds: [
      {
        subject: "Pump",
        record: "Pump",
        on: "protect",
        severity: "info",
        message:
          "In a short of 830 A behind the 40 A fuse, the 40 A fuse in the cable feed may open as soon, and everything else it feeds goes dark: choose the ratings further apart.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "the one before it is the lesser",
    plan: twoBranches(strip(60), strip(70)),
    finds: [
      {
        on: "protect.ratingA",
        message: "In a short of 830 A behind the 70 A fuse, the 60 A fuse in the cable feed may open as soon",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "slow before quick, with ratings apart",
    plan: twoBranches(strip(50), blade(40)),
    finds: "nothing",
  },
  {
    // The maximum let-through of 30 A of Type C, (600 % · 30 A)² · 0.1 s = 3,240 A²s, is less than the minimum of 40 A of Type SF
    // 30, (600 % · 40 A)² · 0.1 s = 5,760 A²s.
    name: "quick before slow: the gates say which opens first",
    plan: twoBranches(blade(30), strip(40)),
    finds: [
      {
        on: "protect.ratingA",
        message:
          "In a short of 830 A behind the 40 A fuse, the 30 A fuse in the cable feed may open before it (unconfirmed figure), and everything",
        values: {},
        fixes: "no fix",
      },
    ],
  },
  {
    name: "the one before it feeds nothing else",
    plan: twoBranches("40", "40", false),
    finds: "nothing",
  },
  {
    name: "two batteries with a fuse each: 60 A carry half of what 100 A carry",
    plan: twoBatteries(100),
    finds: "nothing",
  },
  {
    name: "two batteries with a fuse each: half is still too much for 60 A before 125 A",
    plan: twoBatteries(125),
    finds: [
      {
        record: "Winch",
        on: "protect",
        message:
          "In a short of 1,760 A behind the 125 A fuse, the 60 A fuse in the cable left feed may open as soon",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "two devices in one cable, whatever else hangs there",
    plan: `
      build({ insulationC: 75 });
      const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 100, shortCircuitA: 900 });
      const bus = busBar({ name: "bus bar" });
      cable({ name: "feed", from: bank.positive, to: bus.stud, lengthFt: 3, gauge: 6, protect: 60, protectFarEnd: 60 });
      circuit({ name: "Lamp", from: bus.stud, returnTo: bank.negative, load: 2, oneWayFt: 9, gauge: 14, protect: 5 });
    `,
    finds: "nothing",
  },
  {
    name: "accepted with a reason",
    plan: twoBranches("40", '40, accept: { "protection/selectivity": "the main one is to cut everything" }'),
    finds: [
      {
        on: "protect",
        message: "In a short of 830 A behind the 40 A fuse",
        fixes: "no fix",
        accepted: "the main one is to cut everything",
      },
    ],
  },
]);
