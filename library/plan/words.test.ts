import { describe, expect, it } from "vitest";
import { type BuildInput, build, type CircuitInput, circuit } from "./index.ts";

/** For input that a plan in JavaScript, or one with `as any`, may pass. */
const circuitOf = (input: unknown) => circuit(input as CircuitInput) as unknown as Record<string, unknown>;

describe("what a word gives back", () => {
  it("is what it was given, and says what it is", () => {
    const given = { load: 40, oneWayFt: 15, gauge: 4, protect: { ratingA: 50 } } as const;
    expect(circuit(given)).toEqual({ ...given, kind: "circuit", id: expect.any(Number) });
    expect(build({ voltage: 24 })).toEqual({ voltage: 24, kind: "build", id: expect.any(Number) });
  });

  it("is a copy: later changes of the builder's object are not in it", () => {
    const protect = { ratingA: 50 };
    const made = circuit({ load: 40, oneWayFt: 15, gauge: 4, protect });
    protect.ratingA = 500;
    expect(made.protect).toEqual({ ratingA: 50 });
    expect(Object.isFrozen(protect)).toBe(false);
  });

  it("is frozen through and through", () => {
    const made = circuitOf({
      protect: { ratingA: 50 },
      accept: { "conductor/ampacity": "x" },
      list: [{ a: 1 }],
    });
    const parts = [made, made.protect, made.accept, made.list, (made.list as unknown[])[0]];
    expect(parts.map(Object.isFrozen)).toEqual([true, true, true, true, true]);
    expect(() => {
      (made.protect as Record<string, unknown>).ratingA = 500;
    }).toThrow(TypeError);
  });

  it("says what it is also where the plan says otherwise", () => {
    expect(circuitOf({ kind: "build" }).kind).toBe("circuit");
  });
});

describe("never throws, whatever it is given", () => {
  const circular: Record<string, unknown> = {};
  circular.self = circular;
  let deep: Record<string, unknown> = {};
  for (let i = 0; i < 100_000; i++) deep = { deep };

  it.each<[string, unknown]>([
    ["nothing", undefined],
    ["null", null],
    ["a number", 40],
    ["text", "4 AWG"],
    ["a function", () => 4],
    ["NaN and Infinity", { load: Number.NaN, oneWayFt: Number.POSITIVE_INFINITY }],
    ["a symbol", { load: Symbol("a load") }],
    ["a date", { load: new Date(0) }],
    ["an object without a prototype", Object.assign(Object.create(null), { load: 4 })],
    ["a circular object", circular],
    ["an object nested very deeply", deep],
    ["frozen data", Object.freeze({ protect: Object.freeze({ ratingA: 50 }) })],
  ])("%s", (_, input) => {
    expect(circuitOf(input).kind).toBe("circuit");
    expect((build(input as BuildInput) as { readonly kind: string }).kind).toBe("build");
  });

  it("keeps a wrong value for the check to find", () => {
    expect(circuitOf({ load: Number.NaN, gauge: "four", protect: null })).toEqual({
      load: Number.NaN,
      gauge: "four",
      protect: null,
      kind: "circuit",
      id: expect.any(Number),
    });
  });

  it("takes the names that JavaScript itself uses as names like any other", () => {
    const made = circuitOf(JSON.parse('{"load":4,"__proto__":{"polluted":1},"constructor":"x"}'));
    expect(Object.keys(made)).toEqual(["load", "__proto__", "constructor", "kind", "id"]);
    expect(Object.getPrototypeOf(made)).toBe(Object.prototype);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });
});
