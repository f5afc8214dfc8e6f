import { testRule } from "../rule-tester.ts";
import { voltageDrop } from "./voltage-drop.ts";

// Worked out by hand: 8 AWG is 2.061 Ω/km solid × 1.02 for the strands (sources in library/standards). 40 A of its 65 A
// warm it from 30 to 30 + 45 · (40/65)² = 47.04 °C, where it has 1 + 0.00393 · 27.04 = 1.10627 times the resistance:
// 2.32563 mΩ/m. 40 A lose 10 % of 12 V, 1.2 V, over 2 · 6.4499 m; 3 % over 2 · 1.9350 m; 0.93025 V over 2 · 5 m.
const heater = { gauge: 8, oneWayFt: undefined };

testRule(voltageDrop, [
  { name: "just within 10 %", circuits: [{ ...heater, oneWayM: 6.449 }], finds: "nothing" },
  {
    name: "just beyond 10 %, and the text shows by how much",
    circuits: [{ ...heater, oneWayM: 6.45 }],
    finds: [
      {
        subject: "Heater",
        on: "gauge",
        severity: "warning",
        message:
          "Loses 1.2 V, 10.0002 % of 12 V, over 12.9 m of wire at 47 °C; the limit is 10 % (common practice, no source): use 6 AWG.",
        values: { systemV: 12, dropLimitPercent: 10, atLeast: false },
        fixes: [{ title: "Use 6 AWG", gives: { gauge: 6, protect: 50 } }],
      },
    ],
  },
  {
    name: "just within the 3 % of a critical circuit",
    circuits: [{ ...heater, oneWayM: 1.93, critical: true }],
    finds: "nothing",
  },
  {
    name: "just beyond the 3 % of a critical circuit",
    circuits: [{ ...heater, oneWayM: 1.94, critical: true }],
    finds: [
      {
        on: "gauge",
        severity: "warning",
        message:
          "Loses 0.361 V, 3.01 % of 12 V, over 3.88 m of wire at 47 °C; the limit is 3 % (ISO 10133:2012, 4.8): use 6 AWG.",
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
    name: "a metric conductor: its resistance is recalled, and the message says so",
    circuits: [{ ...heater, gauge: undefined, mm2: 6, load: 10, oneWayM: 20, protect: 15 }],
    finds: [
      {
        on: "mm2",
        message:
          "Loses 1.38 V, 11.5 % of 12 V, over 40 m of wire at 32 °C (resistance: unconfirmed figure); the limit is 10 %",
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
    circuits: [{ ...heater, positiveM: 12, negativeM: 0.89 }],
    finds: "nothing",
  },
  {
    name: "two lengths, together too long",
    circuits: [{ ...heater, positiveM: 12, negativeM: 0.91 }],
    finds: [
      {
        on: "gauge",
        message: "Loses 1.2 V, 10.01 % of 12 V, over 12.9 m of wire",
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
    name: "so far that no made size is enough; shorten the run, or set parallel.",
    circuits: [{ gauge: "4/0", oneWayFt: 900 }],
    finds: [
      {
        on: "gauge",
        message:
          "Loses 3.75 V, 31.2 % of 12 V, over 1,800 ft of wire at 30.6 °C; the limit is 10 % (common practice, no source): no made size is enough; shorten the run, or set parallel.",
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
]);
