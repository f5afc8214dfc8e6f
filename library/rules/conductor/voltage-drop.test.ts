import { testRule } from "../rule.tester.ts";
import { voltageDrop } from "./voltage-drop.ts";

// By hand: 8 AWG is 2.061 Ω/km solid × 1.02 for the strands (sources in library/standards). 40 A of its 65 A warm it from 30 to
// 30 + 45 · (40/65)² = 47.04 °C, where it has 1 + 0.00393 · 27.04 = 1.10627 times the resistance: 2.32563 mΩ/m. 40 A lose 10 % of
// 12 V, 1.2 V, over 2 · 6.4499 m; 3 % over 2 · 1.9350 m; 0.93025 V over 2 · 5 m. A limit is met up to 0.05 percentage points above
// (common practice): 10.05 % over 2 · 6.4822 m, 3.05 % over 2 · 1.9672 m.
const heater = { gauge: 8, oneWayFt: undefined };

testRule(voltageDrop, [
  { name: "just within 10 % and its tolerance", circuits: [{ ...heater, oneWayM: 6.482 }], finds: "nothing" },
  {
    name: "just beyond 10 %, and the text shows by how much",
    circuits: [{ ...heater, oneWayM: 6.483 }],
    finds: [
      {
        subject: "Heater",
        on: "gauge",
        severity: "warning",
        message:
          "Loses 1.21 V, 10.1 % of 12 V, over 13 m of wire at 47 °C; the limit is 10 % (common practice, no source): use 6 AWG.",
        values: { systemV: 12, dropLimitPercent: 10, atLeast: false },
        fixes: [{ title: "Use 6 AWG", gives: { gauge: 6, protect: 50 } }],
      },
    ],
  },
  {
    name: "just within the 3 % of a critical circuit",
    circuits: [{ ...heater, oneWayM: 1.967, critical: true }],
    finds: "nothing",
  },
  {
    name: "just beyond the 3 % of a critical circuit",
    circuits: [{ ...heater, oneWayM: 1.968, critical: true }],
    finds: [
      {
        on: "gauge",
        severity: "warning",
        message:
          "Loses 0.366 V, 3.05 % of 12 V, over 3.94 m of wire at 47 °C; the limit is 3 % (ISO 10133:2012, 4.8): use 6 AWG.",
        fixes: [{ title: "Use 6 AWG", gives: { gauge: 6 } }],
      },
    ],
  },
  {
    name: "a limit that the circuit states",
    circuits: [{ ...heater, oneWayM: 5, dropLimitPercent: 7.7 }],
    finds: [
      {
        on: "gauge",
        message:
          "Loses 0.93 V, 7.75 % of 12 V, over 10 m of wire at 47 °C; the limit is 7.7 % (stated in the plan)",
        fixes: [{ title: "Use 6 AWG", gives: { gauge: 6 } }],
      },
    ],
  },
  {
    name: "watts without a minimum voltage are taken at the nominal one, and the message says so",
    circuits: [{ ...heater, load: undefined, loadW: 480, oneWayM: 6.483 }],
    finds: [
      {
        on: "gauge",
        message:
          "Loses 1.21 V, 10.1 % of 12 V (estimated: drawn at 12 V), over 13 m of wire at 47 °C; the limit",
        fixes: [{ title: "Use 6 AWG", gives: { gauge: 6, protect: 50 } }],
      },
    ],
  },
  {
    // 48 A: 30 + 45 · (48/65)² = 54.5 °C, 2.3875 mΩ/m over 6 m.
    name: "watts at the minimum voltage that the plan states rest on no estimate",
    circuits: [{ ...heater, load: undefined, loadW: 480, minimumV: 10, dropLimitPercent: 5, oneWayM: 3 }],
    finds: [
      {
        on: "gauge",
        message: "Loses 0.688 V, 5.73 % of 12 V, over 6 m of wire",
        fixes: [{ title: "Use 6 AWG with a 60 A fuse", gives: { gauge: 6, protect: 60 } }],
      },
    ],
  },
  {
    name: "a limit that the build states",
    build: { dropPercent: 5 },
    circuits: [{ ...heater, oneWayM: 5 }],
    finds: [
      {
        on: "gauge",
        message:
          "Loses 0.93 V, 7.75 % of 12 V, over 10 m of wire at 47 °C; the limit is 5 % (stated in the plan)",
        fixes: [{ title: "Use 6 AWG", gives: { gauge: 6 } }],
      },
    ],
  },
  {
    name: "the device's least voltage is just met: 11.0697 V arrive",
    circuits: [{ ...heater, oneWayM: 5, minimumV: 11.069 }],
    finds: "nothing",
  },
  {
    name: "the device's least voltage is just not met, within the limit in percent",
    circuits: [{ ...heater, oneWayM: 5, minimumV: 11.07 }],
    finds: [
      {
        on: "gauge",
        severity: "error",
        message:
          "Only 11.0697 V of 12 V arrive (0.93 V lost over 10 m of wire at 47 °C), the device needs 11.07 V: use 6 AWG.",
        values: { minimumV: 11.07 },
        fixes: [{ title: "Use 6 AWG", gives: { gauge: 6 } }],
      },
    ],
  },
  {
    name: "double the voltage, half the percentage: 1.2 V are 5 % of 24 V",
    circuits: [{ ...heater, oneWayM: 6.45, voltage: 24 }],
    finds: "nothing",
  },
  {
    name: "a metric conductor, by the resistance of class 5",
    circuits: [{ ...heater, gauge: undefined, mm2: 6, load: 10, oneWayM: 20, protect: 15 }],
    finds: [
      {
        on: "mm2",
        message: "Loses 1.38 V, 11.5 % of 12 V, over 40 m of wire at 32 °C; the limit is 10 %",
        fixes: [{ title: "Use 10 mm²", gives: { mm2: 10 } }],
      },
    ],
  },
  {
    name: "feet in the plan, feet in the message",
    circuits: [{ gauge: 8, oneWayFt: 22 }],
    finds: [
      {
        on: "gauge",
        message: "Loses 1.25 V, 10.4 % of 12 V, over 44 ft of wire at 47 °C",
        fixes: [{ title: "Use 6 AWG", gives: { gauge: 6 } }],
      },
    ],
  },
  {
    name: "two lengths: what counts is the whole way out and back",
    circuits: [{ ...heater, positiveM: 12, negativeM: 0.96 }],
    finds: "nothing",
  },
  {
    name: "two lengths, together too long",
    circuits: [{ ...heater, positiveM: 12, negativeM: 0.97 }],
    finds: [
      {
        on: "gauge",
        message: "Loses 1.21 V, 10.1 % of 12 V, over 13 m of wire",
        fixes: [{ title: "Use 6 AWG", gives: { gauge: 6 } }],
      },
    ],
  },
  {
    name: "an overloaded conductor gets hotter than its insulation may: at least so much",
    circuits: [{ gauge: 12 }],
    finds: [
      {
        on: "gauge",
        message: "Loses at least 2.36 V, 19.7 % of 12 V, over 30 ft of wire at 75 °C",
        values: { atLeast: true },
        fixes: [{ title: "Use 8 AWG", gives: { gauge: 8 } }],
      },
    ],
  },
  {
    name: "so far that no standard size is enough; shorten the run, or set parallel.",
    circuits: [{ gauge: "4/0", oneWayFt: 900 }],
    finds: [
      {
        on: "gauge",
        message:
          "Loses 3.75 V, 31.2 % of 12 V, over 1,800 ft of wire at 30.6 °C; the limit is 10 % (common practice, no source): no standard size is enough; shorten the run, or set parallel.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "accepted with a reason",
    circuits: [
      { gauge: 8, oneWayFt: 22, accept: { "conductor/voltage-drop": "heats the bilge, any voltage does" } },
    ],
    finds: [
      {
        on: "gauge",
        message: "Loses 1.25 V",
        accepted: "heats the bilge, any voltage does",
        fixes: [{ title: "Use 6 AWG", gives: { gauge: 6 } }],
      },
    ],
  },
  // Networks from here on. By hand for 10 A on 105 °C insulation: the feed, 2 · 3.048 m of 4 AWG at 30.3 °C, loses 0.05274 V; the
  // lamps' circuit, 2 · 3.048 m of 10 AWG at 32.1 °C, loses 0.21344 V, 1.779 %; both together 2.218 %.
  {
    name: "the whole way from the bank, just within its limit",
    plan: onBus('circuit({ name: "lamps", load: 10, dropLimitPercent: 2.17, ...run });'),
    finds: "nothing",
  },
  {
    name: "only the whole way from the bank is beyond the limit",
    plan: onBus('circuit({ name: "lamps", load: 10, dropLimitPercent: 2.16, ...run });'),
    finds: [
      {
        subject: "lamps",
        record: "lamps",
        on: "gauge",
        severity: "warning",
        message:
          '0.266 V are lost from the bank (the battery house) to lamps in "everything on", 2.22 % of 12 V: 0.213 V in lamps and 0.0264 V in feed; the limit is 2.16 % (stated in the plan): use 8 AWG.',
        values: { dropLimitPercent: 2.16 },
        fixes: [{ title: "Use 8 AWG", gives: { gauge: 8, feed: { gauge: 4 } } }],
      },
    ],
  },
  {
    name: "the feed is where the least copper helps",
    plan: onBus('circuit({ name: "lamps", load: 10, dropLimitPercent: 2, ...run, gauge: 8 });', {
      feedGauge: 10,
    }),
    finds: [
      {
        subject: "lamps",
        on: "gauge",
        message:
          '0.347 V are lost from the bank (the battery house) to lamps in "everything on", 2.89 % of 12 V: ',
        fixes: [
          {
            title: "Use 6 AWG here and 8 AWG for feed and feed return",
            gives: { gauge: 6, feed: { gauge: 8 }, "feed return": { gauge: 8 } },
          },
        ],
      },
    ],
  },
  {
    name: "a circuit that is beyond its limit alone speaks for itself, and its repair is enough for the whole way",
    plan: onBus('circuit({ name: "lamps", load: 10, dropLimitPercent: 1.72, ...run });'),
    finds: [
      {
        subject: "lamps",
        on: "gauge",
        message: "Loses 0.213 V, 1.78 % of 12 V, over 20 ft of wire at 32.1 °C; the limit is 1.72 %",
        fixes: [{ title: "Use 8 AWG", gives: { gauge: 8 } }],
      },
    ],
  },
  {
    name: "what else hangs on the feed makes it a suggestion; behind it what touches nothing else",
    plan: onBus(
      'circuit({ name: "lamps", load: 10, dropLimitPercent: 2, ...run, gauge: 8 }); circuit({ name: "pump", load: 20, ...run, gauge: 6, protect: 30 });',
      { feedFt: 5, feedGauge: 8 },
    ),
    finds: [
      {
        subject: "lamps",
        on: "gauge",
        message: "0.342 V are lost from the bank",
        fixes: [
          {
            title: "Use 4 AWG for feed and feed return (which 1 other device shares)",
            kind: "suggestion",
            gives: { gauge: 8, feed: { gauge: 4 }, "feed return": { gauge: 4 } },
          },
        ],
      },
    ],
  },
  {
    name: "a load of its own: the cable that ends at it is the place",
    plan: onBus(
      'const radio = load({ currentA: 10, dropLimitPercent: 2 }); cable({ name: "radio positive", from: bus.stud, to: radio.positive, lengthFt: 10, gauge: 10, protect: 15 }); cable({ name: "radio return", from: radio.negative, to: back.stud, lengthFt: 10, gauge: 10 });',
    ),
    finds: [
      {
        subject: "radio positive",
        on: "gauge",
        message: "0.266 V are lost",
        fixes: [{ title: "Use 8 AWG for radio return", gives: { gauge: 10, "radio return": { gauge: 8 } } }],
      },
    ],
  },
  {
    name: "an inverter is held to 3 %",
    plan: onBus(
      'const kettle = inverter({ continuousW: 300, cutOffV: 10 }); circuit({ name: "inverter supply", to: kettle, ...run, protect: 40 });',
    ),
    finds: [
      {
        subject: "inverter supply",
        on: "gauge",
        message:
          "Loses 0.686 V, 5.72 % of 12 V (estimated: 12 V at rest), over 20 ft of wire at 49 °C; the limit is 3 % (common practice, no source)",
        fixes: [{ title: "Use 4 AWG", gives: { gauge: 4 } }],
      },
    ],
  },
  {
    name: "a limit stated at the circuit to an inverter counts for its whole supply",
    plan: onBus(
      'const kettle = inverter({ continuousW: 300, cutOffV: 10 }); circuit({ name: "inverter supply", to: kettle, ...run, protect: 40, dropLimitPercent: 7.1 });',
    ),
    finds: "nothing",
  },
  {
    name: "a stricter one too, although the circuit alone meets it",
    plan: onBus(
      'const kettle = inverter({ continuousW: 300, cutOffV: 10 }); circuit({ name: "inverter supply", to: kettle, ...run, gauge: 4, protect: 40, dropLimitPercent: 2 });',
    ),
    finds: [
      {
        subject: "inverter supply",
        on: "gauge",
        message: "0.306 V are lost from the bank (the battery house) to the inverter kettle",
        values: { dropLimitPercent: 2, limitSource: "stated in the plan" },
        fixes: [
          {
            title: "Use 2 AWG here and for feed and feed return",
            gives: { gauge: 2, feed: { gauge: 2 }, "feed return": { gauge: 2 } },
          },
        ],
      },
    ],
  },
  {
    name: "of a load and its circuit the lesser limit counts",
    plan: onBus(
      'const radio = load({ currentA: 10, dropLimitPercent: 5 }); circuit({ name: "radio", to: radio, ...run, dropLimitPercent: 2.16 });',
    ),
    finds: [
      {
        on: "gauge",
        message: "0.266 V are lost",
        values: { dropLimitPercent: 2.16 },
        fixes: [{ title: "Use 8 AWG", gives: { gauge: 8 } }],
      },
    ],
  },
  {
    name: "a charger whose least input voltage is assumed is held to 3 %",
    plan: onBus(booster("")),
    finds: [
      {
        subject: "booster input",
        on: "gauge",
        message:
          "Loses 0.522 V, 4.35 % of 12 V (estimated: 12.9 V at rest), over 20 ft of wire at 41.6 °C; the limit is 3 %",
        values: { dropLimitPercent: 3, limitSource: "common practice, no source" },
        fixes: [{ title: "Use 6 AWG", gives: { gauge: 6 } }],
      },
    ],
  },
  {
    name: "a charger made for 10.5 V at its input may lose as much as leaves that of 12 V",
    plan: onBus(booster("inputMinV: 10.5")),
    finds: "nothing",
  },
  {
    name: "a charger made for 11.5 V may not lose as much",
    plan: onBus(booster("inputMinV: 11.5")),
    finds: [
      {
        subject: "booster input",
        on: "gauge",
        message:
          "Loses 0.522 V, 4.35 % of 12 V (estimated: 12.9 V at rest), over 20 ft of wire at 41.6 °C; the limit is 4.17 %",
        values: { limitSource: "stated in the plan" },
        fixes: [{ title: "Use 8 AWG", gives: { gauge: 8 } }],
      },
    ],
  },
  {
    name: "in a network it is the rule about scenarios that knows whether enough arrives",
    plan: onBus('circuit({ name: "lamps", load: 10, minimumV: 11.9, ...run });'),
    finds: "nothing",
  },
  {
    name: "so far that no standard size is enough for the whole way",
    plan: onBus(
      'circuit({ name: "lamps", load: 60, dropLimitPercent: 1, ...run, gauge: "4/0", protect: 80 });',
      {
        feedFt: 40,
      },
    ),
    finds: [
      {
        on: "gauge",
        message: "1.38 V are lost from the bank",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "an inverter, at the closer limit that the build states",
    plan: `build({ insulationC: 105, criticalDropPercent: 1 });
      const house = battery({ chemistry: "AGM", capacityAh: 200, internalMilliohm: 4 });
      const inv = inverter({ continuousW: 500, cutOffV: 9 });
      cable({ name: "plus", from: house.positive, to: inv.positive, lengthFt: 6, gauge: 4, protect: 100 });
      cable({ name: "minus", from: inv.negative, to: house.negative, lengthFt: 6, gauge: 4 });`,
    finds: [
      {
        record: "plus",
        on: "gauge",
        message: "0.154 V are lost from the bank",
        values: { dropLimitPercent: 1, limitSource: "stated in the plan" },
        fixes: [{ title: "Use 2 AWG here and for minus", gives: { gauge: 2, minus: { gauge: 2 } } }],
      },
    ],
  },
  {
    name: "a load of constant resistance draws more when more arrives",
    plan: onBus(
      'const pad = load({ resistanceOhm: 0.8, dropLimitPercent: 2 }); circuit({ name: "pad supply", to: pad, ...run, gauge: 8 });',
    ),
    finds: [
      {
        on: "gauge",
        message: "0.273 V are lost from the bank",
        fixes: [{ title: "Use 6 AWG with a 20 A fuse", gives: { gauge: 6 } }],
      },
    ],
  },
  {
    // 20 A through 40 mΩ: 0.8 V.
    name: "a chassis that loses more than any conductor is named, and no conductor is made thicker for it",
    plan: `build({ insulationC: 105 });
      const house = battery({ chemistry: "AGM", capacityAh: 200, internalMilliohm: 4 });
      const frame = chassis({ name: "frame", milliohm: 40 });
      cable({ name: "bond", from: house.negative, to: frame.bond, lengthFt: 1, gauge: 4 });
      circuit({ name: "pump", from: house.positive, returnTo: frame.metal, load: 20, critical: true, positiveFt: 6, negativeFt: 0.5, gauge: 6, protect: 30 });`,
    finds: [
      {
        subject: "pump",
        on: "gauge",
        message: "0.8",
        values: {
          wayOut:
            "clean and tighten its joints and measure it again, use one with less resistance, or lead a conductor past it",
        },
        fixes: "no fix",
      },
    ],
  },
  {
    name: "where a shared conductor would be made far thicker than it need be, that is an offer, and the device's own conductors come first",
    plan: `build({ insulationC: 90 });
      const bank = battery({ chemistry: "AGM", capacityAh: 200, internalMilliohm: 3 });
      const main = fuseHolder({ ratingA: 50, family: "UL 248-15 Class T", milliohm: 8, on: bank.positive });
      const off = disconnect({ ratedA: 100 });
      cable({ name: "plus", from: main.load, to: off.line, lengthM: 0.5, mm2: 25 });
      const minus = busBar({ side: "negative" });
      cable({ name: "shared return", from: minus.stud, to: bank.negative, lengthM: 5, mm2: 16 });
      const rails = { from: off.load, returnTo: minus.stud, oneWayM: 5 };
      circuit({ name: "heater", ...rails, load: 20, dropLimitPercent: 5, mm2: 4, protect: 25 });
      circuit({ name: "radio", ...rails, load: 4, dropLimitPercent: 2.4, mm2: 16, protect: 5 });`,
    finds: [
      {
        subject: "heater",
        on: "mm2",
        message: "Loses 1.08 V",
        fixes: [
          { title: "Use 25 mm²", kind: "repair", gives: { mm2: 25 } },
          {
            title: "Use 16 mm² here and 50 mm² for shared return (which 1 other device shares)",
            kind: "suggestion",
            gives: { mm2: 16 },
          },
        ],
      },
      {
        subject: "radio",
        on: "mm2",
        message: "0.40",
        fixes: [
          {
            title:
              "Use 25 mm² here and 50 mm² for shared return (which 1 other device shares) (more than two sizes above its own need, as no thinner size meets the limit; else shorten the run, give it its own feed, use a higher system voltage, or state a larger limit)",
            kind: "suggestion",
            gives: { mm2: 25 },
          },
        ],
      },
    ],
  },
]);

/** A bank, a feed of two cables to a pair of bus bars, and the circuits on those. */
function onBus(more: string, { feedGauge = 4, feedFt = 10 } = {}): string {
  return `
    build({ insulationC: 105 });
    const house = battery({ chemistry: "AGM", capacityAh: 200, internalMilliohm: 4 });
    const bus = busBar({ side: "positive" });
    const back = busBar({ side: "negative" });
    cable({ name: "feed", from: house.positive, to: bus.stud, lengthFt: ${feedFt}, gauge: ${feedGauge}, protect: 50 });
    cable({ name: "feed return", from: house.negative, to: back.stud, lengthFt: ${feedFt}, gauge: ${feedGauge} });
    const run = { from: bus.stud, returnTo: back.stud, oneWayFt: 10, gauge: 10, protect: 15 };
    ${more}`;
}

/** A charger of 20 A to another battery: it takes about 29 A over the thin circuit. */
function booster(properties: string): string {
  return `const start = battery({ chemistry: "flooded lead-acid", capacityAh: 90, internalMilliohm: 6 });
    const charger = dcDcCharger({ name: "booster", outputA: 20, isolated: true, ${properties} });
    circuit({ name: "booster input", to: charger, ...run, protect: 40 });
    circuit({ name: "booster output", from: charger.outputPositive, to: start, returnTo: charger.outputNegative, oneWayFt: 3, gauge: 8, protectFarEnd: 30 });
    scenario({ name: "under way", engine: true, chargePercent: 100 });`;
}
