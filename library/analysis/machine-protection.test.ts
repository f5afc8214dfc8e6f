import { expect, test } from "vitest";
import { machineLimit } from "./machine-protection.ts";
import { sampleNetwork } from "./network/sample-network.tester.ts";

test("a conductor from a machine that does not limit itself: 120 % of its rating, 33 CFR 183.460(b)", () => {
  const build = sampleNetwork();
  const bank = build.battery();
  const machine = build.alternator({ ratedA: 58, selfLimiting: false });
  const charge = build.cable(machine.positive, bank.positive);
  const chargeBack = build.cable(bank.negative, machine.negative);
  const network = build.network();
  // 58 · 1.2 leaves dust behind in binary: 69.6 is meant.
  expect(machineLimit(network, charge)).toMatchObject({ maxA: 69.6, alternator: { ratedA: 58 } });
  expect(machineLimit(network, chargeBack)).toBeUndefined();
});

test("no limit of its own: a machine that limits itself, and conductors that leave none", () => {
  const build = sampleNetwork();
  const bank = build.battery();
  const machine = build.alternator({ ratedA: 58, selfLimiting: true });
  const bus = build.busBar();
  const charge = build.cable(machine.positive, bus);
  const feed = build.cable(bus, bank.positive);
  const network = build.network();
  expect([charge, feed, 99].map((index) => machineLimit(network, index))).toEqual([
    undefined,
    undefined,
    undefined,
  ]);
});
