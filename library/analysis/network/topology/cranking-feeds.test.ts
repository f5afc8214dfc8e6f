import { expect, test } from "vitest";
import type { LoadPart } from "../../../model/network.ts";
import { sampleNetwork } from "../sample-network.tester.ts";
import { crankingFeeds } from "./cranking-feeds.ts";
import { networkGraph } from "./network-graph.ts";

const starter: Partial<LoadPart> = {
  draws: { as: "motor", runningA: 0, startingA: 250 },
  statedBy: "starterMotor",
};

test("the conductors between starter motor and battery, not those that join them", () => {
  const build = sampleNetwork();
  const [battery, house] = [build.battery(), build.battery()];
  const off = build.disconnect();
  const motor = build.load(1, starter);
  const alternator = build.alternator();
  const feed = [build.cable(battery.positive, off.line), build.cable(off.load, motor.positive)];
  build.cable(motor.negative, battery.negative);
  build.cable(alternator.positive, motor.positive);
  build.cable(battery.positive, house.positive);
  build.cable(battery.negative, house.negative);
  expect([...crankingFeeds(networkGraph(build.network()))].sort()).toEqual(feed);
});

test("two engines on one battery, and two batteries for one engine", () => {
  const build = sampleNetwork();
  const battery = build.battery();
  const [port, starboard] = [build.load(1, starter), build.load(1, starter)];
  const feeds = [
    build.cable(battery.positive, port.positive),
    build.cable(battery.positive, starboard.positive),
  ];
  const [one, other, bus, motor] = [build.battery(), build.battery(), build.busBar(), build.load(1, starter)];
  feeds.push(
    build.cable(one.positive, bus),
    build.cable(other.positive, bus),
    build.cable(bus, motor.positive),
  );
  expect([...crankingFeeds(networkGraph(build.network()))].sort()).toEqual(feeds);
});

test("none without a starter motor", () => {
  const build = sampleNetwork();
  const [battery, motor] = [build.battery(), build.load(1)];
  build.cable(battery.positive, motor.positive);
  expect(crankingFeeds(networkGraph(build.network())).size).toBe(0);
});
