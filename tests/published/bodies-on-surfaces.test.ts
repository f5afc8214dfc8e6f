import { describe, expect, test } from "vitest";
import { bendByDiameter, bendingSpace } from "../../library/standards/placement-bending-space.ts";
import { fromPetrol, fuelAboveBattery } from "../../library/standards/placement-distances.ts";
import { asInAPlan, type Confirmed, expectSameCells, published } from "./published-data.ts";

interface Placement {
  readonly table_312_6_A: {
    readonly rows: readonly {
      readonly awg: string;
      readonly one_wire_in: number | null;
      readonly two_wires_in?: number;
    }[];
  };
  readonly bend_radius: { readonly planner_default: { readonly multiple_of_OD: number } };
  readonly clearances: readonly {
    readonly source: string;
    readonly confirmed: Confirmed;
    readonly values?: object;
  }[];
}

const { table_312_6_A, bend_radius, clearances } = published<Placement>("bodies-on-surfaces.json");

// NFPA 70 (NEC) 312.6, Table 312.6(A). Sizes above 4/0 have no name in a plan.
test("NFPA 70 Table 312.6(A), bending space at terminals, in", () => {
  const cells = new Map<string, number | null>();
  for (const { awg, one_wire_in, two_wires_in } of table_312_6_A.rows) {
    if (/kcmil/.test(awg)) continue;
    for (const size of sizesIn(awg)) {
      cells.set(`${size} AWG, one wire`, one_wire_in);
      if (two_wires_in !== undefined) cells.set(`${size} AWG, two wires`, two_wires_in);
    }
  }
  const ours = new Map<string, number | null>();
  for (const { awg, oneWireIn, twoWiresIn } of bendingSpace.rows)
    for (const size of awg) {
      ours.set(`${size} AWG, one wire`, oneWireIn);
      if (twoWiresIn !== undefined) ours.set(`${size} AWG, two wires`, twoWiresIn);
    }
  expectSameCells(ours, cells, 17);
});

/** "14-10" names 14, 12 and 10; "4-3" both. */
function sizesIn(printed: string): readonly (number | string)[] {
  const [first, last] = printed.split("-").map((size) => (size.includes("/") ? size : asInAPlan(size))) as [
    number | string,
    number | string | undefined,
  ];
  if (first === 14) return [14, 12, 10];
  return last === undefined ? [first] : [first, last];
}

describe("33 CFR 183, distances of batteries and components", () => {
  const valuesOf = (section: string) => {
    const found = clearances.find(({ source }) => source.includes(section));
    expect(found?.confirmed, section).toBe("read");
    return found?.values;
  };

  test("183.410(b)(3): from a source of petrol vapour, ft", () => {
    expect(valuesOf("183.410(b)(3)")).toEqual({ ft: fromPetrol.leastFt });
  });

  test("183.420(c): metal fuel parts above a battery, in", () => {
    expect(valuesOf("183.420(c)")).toEqual({ in: fuelAboveBattery.withinIn });
  });
});

test("the multiple of the outside diameter is the one that was chosen as common practice", () => {
  expect(bendByDiameter.timesDiameter).toBe(bend_radius.planner_default.multiple_of_OD);
  expect(bendByDiameter.source.confirmed).toBe("memory");
});
