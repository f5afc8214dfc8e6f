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
    name: "accepted with a reason",
    plan: row().replace(
      "capacityAh: 100,",
      'capacityAh: 100, accept: { "battery/links": "fuses are built in" },',
    ),
    finds: [{ on: "", message: "2 lithium batteries", accepted: "fuses are built in", fixes: "no fix" }],
  },
]);
