import { expect, test } from "vitest";
import { coldVoltageFactor } from "./solar-cold-voltage.ts";

const factor = (lowestC: number, percentPerC?: number) => {
  const cold = coldVoltageFactor({ lowestC, percentPerC });
  return cold.judged ? cold.factor : undefined;
};

test("a maker's coefficient counts for every kelvin below 25 °C", () => {
  expect(factor(-10, -0.27)).toBeCloseTo(1.0945, 12);
  expect(factor(24, -0.3)).toBeCloseTo(1.003, 12);
  expect(factor(-60, -0.3)).toBeCloseTo(1.255, 12);
});

test("nowhere below 1", () => {
  expect(factor(25, -0.3)).toBe(1);
  expect(factor(30, -0.3)).toBe(1);
  expect(factor(25)).toBe(1);
  expect(factor(30)).toBe(1);
});

test("without one the table counts; between two rows the colder one", () => {
  expect(factor(24.9)).toBe(1.02);
  expect(factor(20)).toBe(1.02);
  expect(factor(19.9)).toBe(1.04);
  expect(factor(-5)).toBe(1.12);
  expect(factor(-5.1)).toBe(1.14);
  expect(factor(-10)).toBe(1.14);
  expect(factor(-10.1)).toBe(1.16);
  expect(factor(-40)).toBe(1.25);
});

test("colder than the table goes is not judged, and says where the table ends", () => {
  expect(coldVoltageFactor({ lowestC: -40.1, percentPerC: undefined })).toEqual({
    judged: false,
    tableEndsC: -40,
  });
});

test("every row was read", () => {
  const confirmed = (lowestC: number) => {
    const cold = coldVoltageFactor({ lowestC, percentPerC: undefined });
    return cold.judged && cold.source.confirmed;
  };
  expect([confirmed(-6), confirmed(-10), confirmed(-5), confirmed(-11)]).toEqual([
    "read",
    "read",
    "read",
    "read",
  ]);
});
