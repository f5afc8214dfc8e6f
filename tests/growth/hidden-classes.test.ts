import { setFlagsFromString } from "node:v8";
import { afterAll, expect, test } from "vitest";
import { checkFiles, closeCheckers, filesOf } from "../provenance/marked-plan.ts";
import { plansByWord } from "./plans-of-size.ts";

afterAll(closeCheckers);

setFlagsFromString("--allow-natives-syntax");
const isOfOneClass = new Function("one", "other", "return %HaveSameMap(one, other)") as (
  one: object,
  other: object,
) => boolean;

function hiddenClassesOf(objects: readonly object[]): number {
  const classes: object[] = [];
  for (const object of objects) if (!classes.some((one) => isOfOneClass(one, object))) classes.push(object);
  return classes.length;
}

/** See "Objects of one shape" in DEVELOPERS.md: in some versions of V8 each object may get a hidden class of its own. */
test("the objects of a network share few hidden classes", async () => {
  const { plan } = await checkFiles(filesOf(plansByWord.circuit(200)));
  const { network, circuits } = plan.judgement;
  const { conductors, devices, parts } = network!.network;
  const { faults, conductors: currents, supplyPaths } = network!.result;
  const lists = { conductors, devices, parts, currents, supplyPaths, faults: faults.conductors };
  for (const [name, objects] of Object.entries({ ...lists, runs: circuits.map(({ circuit }) => circuit) })) {
    expect(objects.length, name).toBeGreaterThan(190);
    expect(hiddenClassesOf(objects), name).toBeLessThan(15);
  }
});
