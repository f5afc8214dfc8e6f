import { describe, expect, test } from "vitest";
import { deviceFamilies } from "../../library/standards/device-ratings.ts";
import { criticalDropLimit } from "../../library/standards/drop-limits.ts";
import { minimumAwg, minimumMm2 } from "../../library/standards/minimum-sizes.ts";
import {
  protectionDistances,
  protectionOfMachine,
  ratingOverConductor,
  ratingOverContinuousLoad,
} from "../../library/standards/protection-rules.ts";
import { type Confirmed, published } from "./published-data.ts";

// 33 CFR 183, Subpart I. Figures of the law, compared exactly.
describe("33 CFR 183, single figures", () => {
  const { rules } = published<{ rules: LawRule[] }>("33cfr183.json");
  const read = (section: string) => {
    const rule = rules.find((candidate) => candidate.section === section);
    expect(rule?.confirmed, section).toBe("read");
    return rule?.values;
  };

  test("183.425(d), (e): thinnest conductors", () => {
    expect(read("183.425(d)")).toEqual({ min_awg: String(minimumAwg.sheathed.awg) });
    expect(read("183.425(e)")).toEqual({ min_awg: String(minimumAwg.single.awg) });
  });

  test("183.455(b), 183.460(a): distance from the source, in", () => {
    expect(read("183.455(b)(1)")).toEqual({ distance_in: protectionDistances.bare.maxIn });
    expect(read("183.455(b)(2)")).toEqual({ distance_in: protectionDistances.sheathed.maxIn });
    expect(read("183.460(a)")).toEqual({ distance_in: protectionDistances.fromBattery.maxIn });
  });

  test("183.460(b): 120 % of a machine that does not limit itself", () => {
    expect(read("183.460(b)")).toEqual({
      max_ratio: protectionOfMachine.ofRatingPercent / 100,
      at_degC: 60,
    });
  });

  test("183.455(c)(1): 150 % below 50 V is what the law allows, 100 % what the library holds to", () => {
    expect(read("183.455(c)(1)")).toEqual({
      max_ratio: ratingOverConductor.allowedBelow50VPercent / 100,
      below_V: 50,
    });
    expect(ratingOverConductor.heldToPercent).toBe(100);
    expect(ratingOverConductor.source.note).toMatch(/150 %.*100 %/s);
  });
});

// ISO 10133:2012, clauses 4.8 and 7.7, which were read.
describe("ISO 10133, single figures", () => {
  const { iso10133_clauses } = published<{ iso10133_clauses: IsoClause[] }>("metric.json");
  const read = (clause: string) => {
    const found = iso10133_clauses.find((candidate) => candidate.clause === clause);
    expect(found?.confirmed, clause).toBe("read");
    return found?.values;
  };

  test("4.8: 3 % for what is vital", () => {
    expect(read("4.8 / Annex C")).toEqual({ max_drop_percent: criticalDropLimit.percentOfNominal });
  });

  test("7.7: thinnest conductors", () => {
    expect(read("7.7")).toMatchObject({
      min_single_mm2: minimumMm2.single.mm2,
      min_sheathed_mm2: minimumMm2.sheathed.mm2,
    });
    expect(minimumMm2.appliesAboveMm).toBe(200);
  });
});

// NFPA 70, 210.20(A) and 215.3: 125 % of a continuous load.
test("NFPA 70, 210.20(A): 125 %", () => {
  const { rules } = published<{ rules: { values: { factor: number }; confirmed: Confirmed }[] }>("nec.json");
  expect(rules).toEqual([
    expect.objectContaining({ values: { factor: ratingOverContinuousLoad.factor }, confirmed: "read" }),
  ]);
});

describe("families of fuses", () => {
  const { families } = published<{ families: PublishedFamily[] }>("fuses.json");
  const ours: Readonly<Record<string, OurFamily>> = deviceFamilies;

  // Scopes of ISO 8820-3:2015, ISO 8820-12:2020 and ISO 8820-13:2020 were read (rated voltage, breaking capacity);
  // lists of ratings, and all of ISO 8820-4 and -5 and UL 248-15, are recalled: there two copies are compared.
  test.each(families)("$designation", (published) => {
    const family = ours[published.designation.replace(", 300 V", "")];
    expect(family?.ratingsA).toEqual(published.ratings_A);
    expect(family?.ratingsSource.confirmed).toBe(
      published.confirmed_fields?.ratings_A ?? published.confirmed,
    );
    expect(family?.ratedVoltagesV).toEqual(published.rated_V ?? []);
    expect(family?.ratedVoltageConfirmed).toBe(published.confirmed_fields?.rated_V ?? published.confirmed);
    expect(family?.breakingCapacityA).toBe(published.breaking_capacity_A ?? null);
    expect(family?.breakingCapacityConfirmed).toBe(
      published.confirmed_fields?.breaking_capacity_A ?? published.confirmed,
    );
  });

  // The same scopes: Type C and F and E up to 100 A in all, Types N and P up to 30 A.
  test.each([
    ["ISO 8820-3 Type E", 100],
    ["ISO 8820-12 Type N", 30],
    ["ISO 8820-13 Type P", 30],
  ] as const)("the scope of %s ends at %i A", (family, greatestA) => {
    expect(Math.max(...deviceFamilies[family].ratingsA)).toBe(greatestA);
  });

  // NFPA 70, 240.6(A), recalled, with its small ratings for fuses; FAA AC 43.13-1B, Table 11-3, lists 5 and 7.5 A.
  test("circuit breakers", () => {
    const standard = published<{ standard_device_ratings_240_6_A: NecRatings }>(
      "nec.json",
    ).standard_device_ratings_240_6_A;
    const chart = published<{ table_11_3_dc_wire_and_circuit_protector: { rows: ChartRow[] } }>("faa.json")
      .table_11_3_dc_wire_and_circuit_protector.rows;
    const small = chart
      .map(({ breaker_A }) => breaker_A)
      .filter((ratingA) => ratingA !== null && ratingA < 10);
    expect(small).toEqual([5, 7.5]);
    const additional = standard.additional_fuse_ratings.filter((ratingA) => ratingA < 15);
    const expected = [...additional, ...small, ...standard.amps].sort(
      (one, other) => Number(one) - Number(other),
    );
    expect(deviceFamilies["circuit breaker"].ratingsA).toEqual(expected);
    expect(deviceFamilies["circuit breaker"].ratingsSource.confirmed).toBe("memory");
  });

  test("no family is without its source", () => {
    expect(Object.keys(ours).sort()).toEqual(
      [...families.map(({ designation }) => designation.replace(", 300 V", "")), "circuit breaker"].sort(),
    );
  });
});

interface LawRule {
  section: string;
  values?: Record<string, number | string>;
  confirmed: Confirmed;
}

interface IsoClause {
  clause: string;
  values?: Record<string, number>;
  confirmed: Confirmed;
}

interface PublishedFamily {
  designation: string;
  ratings_A: number[];
  rated_V?: number[];
  breaking_capacity_A?: number;
  confirmed: Confirmed;
  confirmed_fields?: { ratings_A?: Confirmed; rated_V?: Confirmed; breaking_capacity_A?: Confirmed };
}

interface OurFamily {
  ratingsA: readonly number[];
  ratedVoltagesV: readonly number[];
  ratedVoltageConfirmed: string;
  breakingCapacityA: number | null;
  breakingCapacityConfirmed: string;
  ratingsSource: { confirmed: string };
}

interface NecRatings {
  amps: number[];
  additional_fuse_ratings: number[];
}

interface ChartRow {
  breaker_A: number | null;
}
