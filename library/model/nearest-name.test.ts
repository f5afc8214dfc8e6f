import { expect, it } from "vitest";
import { circuitProperties } from "./circuit-properties.ts";
import { nearestName } from "./nearest-name.ts";
import { protection } from "./protection-properties.ts";
import type { Word } from "./record.ts";
import { wordProperties } from "./word-properties.ts";

const ofCircuit = [...circuitProperties.properties.keys()];
const ofProtection = [...(protection.parts?.properties.keys() ?? [])];

it.each<[string, string | undefined]>([
  ["gage", "gauge"],
  ["gague", "gauge"],
  ["GAUGE", "gauge"],
  ["awg", "gauge"],
  ["mm", "mm2"],
  ["protekt", "protect"],
  ["fuse", "protect"],
  ["oneWayFeet", "oneWayFt"],
  ["onewayft", "oneWayFt"],
  ["insulation", "insulationC"],
  ["engine", "engineSpace"],
  ["paralel", "parallel"],
  ["loadA", "load"],
  ["color", "colour"],
  ["returnColor", "returnColour"],
  // Its end matters more than its colour.
  ["return", "returnTo"],
  // Two are equally near, or the unit is open: to offer one would be a guess.
  ["oneWay", undefined],
  ["positive", undefined],
  // Another unit means another number.
  ["oneWayCm", undefined],
  ["oneWayMm", undefined],
  ["oneWayIn", undefined],
  ["loadKw", undefined],
  ["loadMa", undefined],
  ["ambientF", undefined],
  ["insulationF", undefined],
  ["voltageMv", undefined],
  // No similar name.
  ["wallpaper", undefined],
  ["__proto__", undefined],
  ["constructor", undefined],
  ["", undefined],
  ["g".repeat(5_000), undefined],
])("%s is taken to mean %s", (typed, meant) => {
  expect(nearestName(typed, ofCircuit)).toBe(meant);
});

it.each<[string, string | undefined]>([
  ["rating", "ratingA"],
  ["ratinga", "ratingA"],
  ["familly", "family"],
  ["distanceM", undefined],
  ["distanceCm", undefined],
  ["distanceFt", undefined],
  ["distance", undefined],
  ["interruptingKa", undefined],
  // It lacks only its unit, and another name goes on: `interruptingAtV`.
  ["interrupting", "interruptingA"],
])("%s, of a fuse, is taken to mean %s", (typed, meant) => {
  expect(nearestName(typed, ofProtection)).toBe(meant);
});

it.each<[Word, string, string | undefined]>([
  ["battery", "capacityah", "capacityAh"],
  ["battery", "capacityWh", undefined],
  ["battery", "capacitykWh", undefined],
  ["battery", "internalOhm", undefined],
  ["battery", "internalMilliohms", "internalMilliohm"],
  ["battery", "shortCircuitKa", undefined],
  ["shunt", "ratedMv", "ratedMV"],
  ["shunt", "ratedV", undefined],
  ["chassis", "milliohms", "milliohm"],
  ["load", "resistanceMilliohm", undefined],
  ["inverter", "continuousKw", undefined],
  ["solarArray", "openCircuitPercentPerF", undefined],
  ["scenario", "bankMv", undefined],
  ["busBar", "torque", "torqueNm"],
  ["busBar", "torqueFtLb", undefined],
  ["busBar", "torqueInLb", undefined],
  ["fusePanel", "branchTorqueNM", "branchTorqueNm"],
  ["build", "slack", "slackPercent"],
  ["build", "endSlackCm", undefined],
])("%s: %s is taken to mean %s", (word, typed, meant) => {
  expect(nearestName(typed, wordProperties[word].properties.keys())).toBe(meant);
});
