import { expect, test } from "vitest";
import { sampleNetwork } from "../sample-network.tester.ts";
import type { UnprotectedPath } from "../topology/network-topology.ts";
import { isProtectedAtOtherEnd, sharesShorts } from "./fed-at-device.ts";

function path(conductor: number, ...ends: UnprotectedPath["ends"]): UnprotectedPath {
  return { conductor, ends, sources: [], sourceCount: 0, fromPanelsAlone: false, way: [], tooGreat: [] };
}

test("two sources, and a device at one end: the other is missing", () => {
  const build = sampleNetwork();
  const [bank, charger] = [build.battery(), build.shoreCharger()];
  const charge = build.cable(charger.positive, bank.positive, { near: 40 });
  build.cable(charger.negative, bank.negative);
  expect(isProtectedAtOtherEnd(build.network(), path(charge, "far"))).toBe(true);
});

test("one source, and the device at the end where it does not arrive: none is there that counts", () => {
  const build = sampleNetwork();
  const [bank, lamp] = [build.battery(), build.load()];
  const feed = build.cable(bank.positive, lamp.positive, { far: 40 });
  build.cable(lamp.negative, bank.negative);
  expect(isProtectedAtOtherEnd(build.network(), path(feed, "near"))).toBe(false);
});

test("no device at all", () => {
  const build = sampleNetwork();
  const [bank, charger] = [build.battery(), build.shoreCharger()];
  const charge = build.cable(charger.positive, bank.positive);
  expect(isProtectedAtOtherEnd(build.network(), path(charge, "far"))).toBe(false);
  expect(isProtectedAtOtherEnd(build.network(), path(charge, "near", "far"))).toBe(false);
});

test("a ring: the source comes to the device by the other way round", () => {
  const build = sampleNetwork();
  const [bank, one, other] = [build.battery(), build.busBar(), build.busBar()];
  build.cable(bank.positive, one, { near: 60 });
  const across = build.cable(one, other, { far: 40 });
  build.cable(one, other);
  expect(isProtectedAtOtherEnd(build.network(), path(across, "near"))).toBe(true);
});

test("a battery's fuse shares a short with that of the battery beside it; a charger beside it does not make it share", () => {
  const build = sampleNetwork();
  const [left, right, charger] = [build.battery(), build.battery(), build.shoreCharger()];
  const [bus, lamp] = [build.busBar(), build.load()];
  const string = build.cable(left.positive, bus, { near: 60 });
  build.cable(right.positive, bus, { near: 60 });
  const branch = build.cable(bus, lamp.positive, { near: 20 });
  const charge = build.cable(charger.positive, bus, { far: 40 });
  const network = build.network();
  const sharing = [string, branch, charge].map((index) => {
    const { near, far } = network.conductors[index]!;
    return sharesShorts(network, (near ?? far)!.index);
  });
  expect(sharing).toEqual([true, false, false]);
});
