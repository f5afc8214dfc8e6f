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
  const { families, families_scope_only: scopes } = published<{
    families: PublishedFamily[];
    families_scope_only: PublishedScope[];
  }>("fuses.json");
  const ours: Readonly<Record<string, OurFamily>> = deviceFamilies;

  // Scopes of ISO 8820-3:2015, -4:2016, -5:2015, -12:2020 and -13:2020 were read (rated voltage, breaking capacity); lists of
  // ratings except that of Type C, and all of UL 248-15, are recalled: there two copies are compared.
  test.each(families)("$designation", (published) => {
    const family = ours[published.designation.replace(", 300 V", "")];
    const made = [...published.ratings_A, ...(published.also_made_A ?? [])];
    expect(family?.ratingsA).toEqual(made.sort((one, other) => one - other));
    expect(family?.ratingsSource.confirmed).toBe(
      standing(published.confirmed_fields?.ratings_A ?? published.confirmed),
    );
    expect(family?.ratedVoltagesV).toEqual(published.rated_V ?? []);
    expect(family?.ratedVoltageConfirmed).toBe(
      standing(published.confirmed_fields?.rated_V ?? published.confirmed),
    );
    expect(family?.breakingCapacityA).toBe(published.breaking_capacity_A ?? null);
    expect(family?.breakingCapacityConfirmed).toBe(
      standing(published.confirmed_fields?.breaking_capacity_A ?? published.confirmed),
    );
  });

  // ISO 20934:2019 and ISO 8820-6:2019: only the scopes were read. No rating of ours is outside of them.
  test.each(scopes)("$designation: its scope", (scope) => {
    const family = ours[scopeName(scope)];
    expect(scope.confirmed).toBe("read");
    expect(family?.ratedVoltagesV).toEqual(scope.rated_V);
    expect(family?.ratedVoltageConfirmed).toBe("read");
    expect(family?.breakingCapacityA).toBe(scope.breaking_capacity_A);
    expect(family?.breakingCapacityConfirmed).toBe("read");
    expect(family?.ratingsA.at(-1)).toBe(scope.rating_max_A);
    if (scope.rating_min_A !== undefined) expect(family?.ratingsA[0]).toBe(scope.rating_min_A);
    expect(family?.ratingsSource.confirmed).toBe("memory");
  });

  // The same scopes: Type C and F and E up to 100 A in all, Types N and P up to 30 A.
  test.each([
    ["ISO 8820-3 Type E", 100],
    ["ISO 8820-12 Type N", 30],
    ["ISO 8820-13 Type P", 30],
  ] as const)("the scope of %s ends at %i A", (family, greatestA) => {
    expect(Math.max(...deviceFamilies[family].ratingsA)).toBe(greatestA);
  });

  // NFPA 70, 240.6(A), read, with its small ratings for fuses; FAA AC 43.13-1B, Table 11-3, lists 5 and 7.5 A.
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
    expect(standard.confirmed).toBe("read");
    expect(deviceFamilies["circuit breaker"].ratingsSource.confirmed).toBe("read");
  });

  test("no family is without its source", () => {
    expect(Object.keys(ours).sort()).toEqual(
      [
        ...families.map(({ designation }) => designation.replace(", 300 V", "")),
        ...scopes.map(scopeName),
        "circuit breaker",
      ].sort(),
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
  also_made_A?: number[];
  confirmed: string;
  confirmed_fields?: { ratings_A?: string; rated_V?: string; breaking_capacity_A?: string };
}

interface PublishedScope {
  designation: string;
  rated_V: number[];
  rating_min_A?: number;
  rating_max_A: number;
  breaking_capacity_A: number;
  confirmed: Confirmed;
}

/** "ISO 20934 SF36-70V, SF51-70V, SF56-70V" is one family: one scope covers its types. */
function scopeName({ designation }: PublishedScope): string {
  return designation.replace(/ SF.*/, "");
}

/** "read: the 13 ratings of a maker's range" is read. */
function standing(confirmed: string): string {
  return confirmed.split(/[: ]/)[0] ?? confirmed;
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
  confirmed: Confirmed;
  amps: number[];
  additional_fuse_ratings: number[];
}

interface ChartRow {
  breaker_A: number | null;
}
