import { testRule } from "../rule.tester.ts";
import { bankLinks } from "./links.ts";

const inSeries = (link: string, fuse = 125) => `
  build({ voltage: 24, insulationC: 105 });
  const lower = battery({ chemistry: "AGM", nominalV: 12, capacityAh: 100, internalMilliohm: 5 });
  const upper = battery({ chemistry: "AGM", nominalV: 12, capacityAh: 100, internalMilliohm: 5 });
  cable({ name: "link", from: lower.positive, to: upper.negative, ${link} });
  circuit({ name: "winch", from: upper.positive, returnTo: lower.negative, load: 20, oneWayFt: 5, gauge: 1,
    protect: { ratingA: ${fuse}, family: "UL 248-15 Class T", interruptingA: 20_000 } });`;

const row = (own = "") => `
  build({ insulationC: 105 });
  const left = battery({ chemistry: "LiFePO4", capacityAh: 100, internalMilliohm: 5 });
  const right = battery({ chemistry: "LiFePO4", capacityAh: 100, internalMilliohm: 5 });
  cable({ name: "plus link", from: right.positive, to: left.positive, lengthFt: 1, gauge: 1${own} });
  cable({ name: "minus link", from: right.negative, to: left.negative, lengthFt: 1, gauge: 1 });
  circuit({ name: "winch", from: left.positive, returnTo: right.negative, load: 20, oneWayFt: 5, gauge: 1, protect: 125 });`;

// By hand: with 105 °C insulation 6 AWG may carry 120 A, 4 AWG 160 A (33 CFR 183.425(b), Table 5).
testRule(bankLinks, [
  {
    name: "a link that may carry as much as the fuse lets through",
    plan: inSeries("lengthFt: 1, gauge: 4"),
    finds: "nothing",
  },
  {
    name: "a fuse of exactly what the link may carry",
    plan: inSeries("lengthFt: 1, gauge: 6", 120),
    finds: "nothing",
  },
  {
    name: "a link thinner than the fuse of the bank allows",
    plan: inSeries("lengthFt: 1, gauge: 6"),
    finds: [
      {
        subject: "link",
        record: "link",
        on: "gauge",
        severity: "error",
        message:
          "6 AWG may carry 120 A (33 CFR 183.425(b), Table 5), and the bank's fuse of 125 A lets more through this link for hours: use 4 AWG.",
        fixes: [{ title: "Use 4 AWG", gives: { gauge: 4 } }],
      },
    ],
  },
  {
    // 8 AWG may carry 80 A, the feed and the link alike: the fuse is wrong for both.
    name: "a link thinner than a fuse that becomes lesser for the feed anyway",
    plan: `
      build({ voltage: 24, insulationC: 105 });
      const lower = battery({ chemistry: "AGM", nominalV: 12, capacityAh: 100, internalMilliohm: 5 });
      const upper = battery({ chemistry: "AGM", nominalV: 12, capacityAh: 100, internalMilliohm: 5 });
      cable({ name: "link", from: lower.positive, to: upper.negative, lengthFt: 1, gauge: 8 });
      const main = fuseHolder({ name: "main fuse", ratingA: 125, family: "UL 248-15 Class T", interruptingA: 20_000, on: upper.positive });
      const oven = load({ name: "oven", currentA: 40 });
      cable({ name: "feed", from: main.load, to: oven.positive, lengthFt: 3, gauge: 8 });
      cable({ name: "back", from: oven.negative, to: lower.negative, lengthFt: 3, gauge: 8 });`,
    finds: [
      {
        subject: "link",
        on: "gauge",
        severity: "error",
        message:
          "8 AWG may carry 80 A (33 CFR 183.425(b), Table 5), and the bank's fuse of 125 A lets more through this link for hours: use an 80 A fuse for main fuse.",
        fixes: [{ title: "Use an 80 A fuse for main fuse", gives: { "main fuse": { ratingA: 80 } } }],
      },
    ],
  },
  {
    name: "a link of exactly 72 in",
    plan: inSeries("lengthFt: 6, gauge: 4"),
    finds: "nothing",
  },
  {
    name: "a longer link without a fuse",
    plan: inSeries("lengthFt: 6.5, gauge: 4"),
    finds: [
      {
        on: "lengthFt",
        severity: "warning",
        message:
          "This link between batteries has no fuse, and is longer than 72 in (33 CFR 183.460(a)): bring the batteries closer, or put a fuse in.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "two lithium batteries in parallel without fuses of their own",
    plan: row(),
    finds: [
      {
        subject: "left",
        record: "left",
        on: "",
        severity: "warning",
        message:
          "2 lithium batteries in parallel, and left and right have no fuse of their own: the others feed a fault in one of them with all their current (common practice, no source). Give each battery a fuse at its terminal.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "the same in lead-acid",
    plan: row().replaceAll("LiFePO4", "AGM"),
    finds: "nothing",
  },
  {
    name: "a fuse in one of the two: the other feeds through it",
    plan: row(", protect: { ratingA: 125, distanceIn: 4 }"),
    finds: "nothing",
  },
  {
    name: "the middles of two lithium strings joined past their fuses",
    plan: middles(),
    finds: [
      {
        subject: "middle",
        record: "middle",
        on: "",
        severity: "warning",
        message:
          "Connects the middles of two strings of lithium batteries, with no fuse in it: a fault in one string is fed past the fuses of both, and their protections no longer cut off together (common practice, no source). Take it out.",
        fixes: "no fix",
      },
    ],
  },
  { name: "with a fuse in it", plan: middles("protect: 100"), finds: "nothing" },
  {
    name: "the middles of lead-acid strings",
    plan: middles().replaceAll("LiFePO4", "AGM"),
    finds: "nothing",
  },
  {
    name: "accepted with a reason",
    plan: row().replace(
      "capacityAh: 100,",
      'capacityAh: 100, accept: { "battery/links": "fuses are built in" },',
    ),
    finds: [{ on: "", message: "2 lithium batteries", accepted: "fuses are built in", fixes: "no fix" }],
  },
]);

/** Two strings of two, each with a fuse of its own at its top, and a cable between their middles. */
function middles(fuse = ""): string {
  return `
    build({ voltage: 24, insulationC: 105 });
    const plus = busBar({});
    const minus = busBar({});
    const string = (side) => {
      const of12 = { chemistry: "LiFePO4", nominalV: 12, capacityAh: 100, internalMilliohm: 5 };
      const lower = battery({ ...of12, name: side + " lower" });
      const upper = battery({ ...of12, name: side + " upper" });
      cable({ name: side + " link", from: lower.positive, to: upper.negative, lengthFt: 1, gauge: 2 });
      cable({ name: side + " plus", from: upper.positive, to: plus.stud, lengthFt: 2, gauge: 2, protect: 100 });
      cable({ name: side + " minus", from: lower.negative, to: minus.stud, lengthFt: 2, gauge: 2 });
      return lower;
    };
    const left = string("left");
    const right = string("right");
    cable({ name: "middle", from: left.positive, to: right.positive, lengthFt: 1, gauge: 2, ${fuse} });
    circuit({ name: "lamps", from: plus.stud, returnTo: minus.stud, load: 5, oneWayFt: 8, gauge: 12, protect: 10 });`;
}
