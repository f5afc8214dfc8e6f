import { testRule } from "../rule.tester.ts";
import { inverterSupply } from "./supply.ts";

const blade = '{ ratingA: 100, family: "ISO 8820-3 Type E" }';
const lamps =
  'circuit({ name: "lamps", from: off.load, returnTo: house.negative, load: 30, oneWayFt: 2, gauge: 6, protect: 40 });';

// By hand: 900 W at 90 % and 10 V are 100 A; at the 12.4 V that arrive with the bank at 12.8 V they are 80 A. With 105 °C
// insulation 8 AWG may carry 80 A, 6 AWG 120 A.
testRule(inverterSupply, [
  { name: "a fuse of exactly what it takes at its cut-off", plan: planWith({ fuse: 100 }), finds: "nothing" },
  {
    name: "a fuse below what it takes at its cut-off",
    plan: planWith({ fuse: 99 }),
    finds: [
      {
        subject: "inverter supply",
        record: "inverter supply",
        on: "protect",
        severity: "warning",
        message: "At 10 V the inverter kettle takes 100 A; the 99 A fuse opens: use a 100 A fuse.",
        fixes: [{ title: "Use a 100 A fuse", gives: { protect: 100, gauge: 2 } }],
      },
    ],
  },
  {
    name: "the conductor may carry exactly what it takes: 1,080 W are 120 A",
    plan: planWith({ inverter: "continuousW: 1080, cutOffV: 10", gauge: 6, fuse: 120 }),
    finds: "nothing",
  },
  {
    name: "the conductor may carry a little less than what it takes",
    plan: planWith({ inverter: "continuousW: 1081, cutOffV: 10", gauge: 6, fuse: 125 }),
    finds: [
      {
        on: "gauge",
        message:
          "At 10 V the inverter kettle takes 120.1 A; 6 AWG may carry 120 A (33 CFR 183.425(b), Table 5): use 4 AWG.",
        fixes: [{ title: "Use 4 AWG", gives: { gauge: 4, protect: 125 } }],
      },
    ],
  },
  {
    name: "what it draws idle counts too",
    plan: planWith({ inverter: "continuousW: 900, cutOffV: 10, idleW: 10", fuse: 100 }),
    finds: [
      {
        on: "protect",
        message: "At 10 V the inverter kettle takes 101 A; the 100 A fuse opens: use a 110 A fuse.",
        fixes: [{ title: "Use a 110 A fuse", gives: { protect: 110 } }],
      },
    ],
  },
  {
    name: "a better efficiency that is stated",
    plan: planWith({ inverter: "continuousW: 900, cutOffV: 10, efficiencyPercent: 94", fuse: 96 }),
    finds: "nothing",
  },
  {
    name: "a cut-off that is not stated is 3 V a cell of LiFePO4: 83.3 A",
    plan: planWith({ inverter: "continuousW: 900", fuse: 83 }),
    finds: [
      {
        on: "protect",
        message:
          "At 12 V (estimated: common practice, no source) the inverter kettle takes 83.3 A; the 83 A fuse opens: use a 100 A fuse.",
        fixes: [{ title: "Use a 100 A fuse", gives: { protect: 100 } }],
      },
    ],
  },
  {
    name: "a cut-off that is not stated is 1.75 V a lead-acid cell: 95.2 A",
    plan: planWith({ inverter: "continuousW: 900", fuse: 95 }).replace("LiFePO4", "AGM"),
    finds: [
      {
        on: "protect",
        message:
          "At 10.5 V (estimated: common practice, no source) the inverter kettle takes 95.2 A; the 95 A fuse opens: use a 110 A fuse.",
        fixes: [{ title: "Use a 110 A fuse", gives: { protect: 110 } }],
      },
    ],
  },
  {
    name: "less power in use does not count: it may give all of it",
    plan: planWith({ inverter: "continuousW: 900, cutOffV: 10, loadW: 200", fuse: 90 }),
    finds: [
      {
        on: "protect",
        message: "At 10 V the inverter kettle takes 100 A; the 90 A fuse opens: use a 100 A fuse.",
        fixes: [{ title: "Use a 100 A fuse", gives: { protect: 100 } }],
      },
    ],
  },
  {
    name: "a conductor that other loads share carries theirs too",
    plan: planWith({ mainFuse: 125, fuse: 110, more: lamps }),
    finds: [
      {
        subject: "bank to disconnect",
        on: "protect.ratingA",
        message:
          'At 10 V the inverter kettle takes 100 A, which makes 130 A here in "everything on"; the 125 A fuse opens: use a 150 A fuse.',
        fixes: [{ title: "Use a 150 A fuse", gives: { "protect.ratingA": 150, gauge: "4/0" } }],
      },
    ],
  },
  {
    name: "two batteries share it: each fuse carries half",
    plan: twoBatteries(60),
    finds: "nothing",
  },
  {
    name: "two batteries share it, with less than half in each fuse",
    plan: twoBatteries(45),
    finds: [
      {
        subject: "first battery",
        on: "protect.ratingA",
        message:
          "At 10 V the inverter kettle takes 100 A, 50 A of it here; the 45 A fuse opens: use a 50 A fuse.",
        fixes: [{ title: "Use a 50 A fuse", gives: { "protect.ratingA": 50 } }],
      },
      {
        subject: "second battery",
        on: "protect.ratingA",
        message:
          "At 10 V the inverter kettle takes 100 A, 50 A of it here; the 45 A fuse opens: use a 50 A fuse.",
        fixes: [{ title: "Use a 50 A fuse", gives: { "protect.ratingA": 50 } }],
      },
    ],
  },
  {
    name: "a surge just below 200 % of the fuse, which no gate says it may not stand",
    plan: planWith({ inverter: "continuousW: 800, cutOffV: 10, surgeW: 1799", fuse: blade }),
    finds: "nothing",
  },
  {
    name: "a surge of 200 % of the fuse, which may open then after 2 s: advice",
    plan: planWith({ inverter: "continuousW: 800, cutOffV: 10, surgeW: 1800", fuse: blade }),
    finds: [
      {
        on: "protect.ratingA",
        severity: "info",
        message:
          "At 10 V the inverter kettle takes 200 A for seconds; the 100 A fuse may open after 2 s (ISO 8820-3:2015, Type E, operating time ratings, unconfirmed figure): use a slower family, or a higher rating on a thicker conductor.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "what opens at the current that lasts needs no advice about the surge",
    plan: planWith({ inverter: "continuousW: 1000, cutOffV: 10, surgeW: 2000", fuse: blade }),
    finds: [
      {
        on: "protect.ratingA",
        severity: "warning",
        message: "At 10 V the inverter kettle takes 111 A; the 100 A fuse opens: choose another family",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "accepted with a reason",
    plan: planWith({ fuse: 90, run: 'accept: { "inverter/supply": "it only ever runs a shaver" },' }),
    finds: [
      {
        on: "protect",
        message: "At 10 V the inverter kettle takes 100 A; the 90 A fuse opens",
        accepted: "it only ever runs a shaver",
        fixes: [{ title: "Use a 100 A fuse", gives: { protect: 100 } }],
      },
    ],
  },
]);

interface Changes {
  readonly inverter?: string;
  readonly gauge?: number;
  readonly fuse?: number | string;
  readonly mainFuse?: number;
  /** More properties of the inverter's circuit. */
  readonly run?: string;
  readonly more?: string;
}

function planWith({
  inverter = "continuousW: 900, cutOffV: 10",
  gauge = 2,
  fuse = 100,
  mainFuse = 300,
  run = "",
  more = "",
}: Changes): string {
  return `
    build({ insulationC: 105 });
    const house = battery({ chemistry: "LiFePO4", capacityAh: 280, internalMilliohm: 1 });
    const off = disconnect({ ratedA: 300 });
    cable({ name: "bank to disconnect", from: house.positive, to: off.line, lengthFt: 1, gauge: "4/0",
      protect: { ratingA: ${mainFuse}, family: "UL 248-15 Class T", distanceIn: 6, interruptingA: 20_000 } });
    const kettle = inverter({ ${inverter} });
    circuit({ name: "inverter supply", from: off.load, returnTo: house.negative, to: kettle, oneWayFt: 2,
      gauge: ${gauge}, protect: ${fuse}, ${run} });
    ${more}`;
}

function twoBatteries(fuse: number): string {
  const battery = 'chemistry: "LiFePO4", capacityAh: 280, internalMilliohm: 1';
  const protect = `protect: { ratingA: ${fuse}, family: "UL 248-15 Class T", distanceIn: 6, interruptingA: 20_000 }`;
  return `
    build({ insulationC: 105 });
    const first = battery({ ${battery} });
    const second = battery({ ${battery} });
    const bus = busBar({ side: "positive" });
    const back = busBar({ side: "negative" });
    cable({ name: "first battery", from: first.positive, to: bus.stud, lengthFt: 2, gauge: 2, ${protect} });
    cable({ name: "second battery", from: second.positive, to: bus.stud, lengthFt: 2, gauge: 2, ${protect} });
    cable({ name: "first return", from: first.negative, to: back.stud, lengthFt: 2, gauge: 2 });
    cable({ name: "second return", from: second.negative, to: back.stud, lengthFt: 2, gauge: 2 });
    const kettle = inverter({ continuousW: 900, cutOffV: 10 });
    circuit({ name: "inverter supply", from: bus.stud, returnTo: back.stud, to: kettle, oneWayFt: 2, gauge: 2, protect: 125 });`;
}
