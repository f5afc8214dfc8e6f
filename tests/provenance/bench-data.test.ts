import { afterAll, expect, it } from "vitest";
import { closeCheckers, expectMarks } from "./marked-plan.ts";

afterAll(closeCheckers);

it("what is wrong with a spool is marked in it, and all circuits and the network are judged", async () => {
  const plan = await expectMarks(`
import { battery, build, circuit } from "loomwright";
const small = { gauge: 3, lengthFt: 100 } as any;
//                     ^ error plan/invalid-value spools.0.gauge is not one of the sizes: 3
build({
  insulationC: 105,
  endSlackMm: -5,
//            ^^ error plan/invalid-value endSlackMm is negative: -5
  spools: [
    small,
    { gauge: 12, lengthFt: 100, color: "red" } as any,
//                              ^^^^^ error plan/invalid-value spools.1.color is not a property of a spool. Did you mean colour?
    { mm2: 4 } as any,
//  ^^^^^^^^^^ error plan/invalid-value spools.2 a length is missing. Allowed: lengthFt or lengthM.
    { mm2: 4, lengthM: 50, price: "40" as any },
//                                ^^^^ error plan/invalid-value spools.3.price is text, not a number: "40"
  ],
});
const house = battery({ chemistry: "LiFePO4", capacityAh: 100, torqueNm: 900 });
//            ^^^^^^^ info network/unconnected
//                                                                       ^^^ error plan/invalid-value torqueNm is too large: 900
circuit({
  name: "Lamp", load: 2, oneWayFt: 3, gauge: 12, colour: "", returnColour: "blue",
//                                                       ^^ error plan/invalid-value colour is empty
  protect: { ratingA: 5, family: "ISO 8820-3 Type F", distanceIn: 3, price: -2 },
//                                                                          ^^ error plan/invalid-value protect.price is negative
});
`);
  const { model, circuits, network } = plan.judgement;
  expect([model.networkUnread, circuits.length, network?.network.parts.length]).toEqual([false, 1, 1]);
  expect(model.build.bench.spools).toEqual([
    { size: { awg: 12 }, lengthM: 30.48 },
    { size: { mm2: 4 }, lengthM: 50 },
  ]);
});
