import { beforeEach, describe, expect, it } from "vitest";
import {
  battery,
  build,
  busBar,
  cable,
  circuit,
  disconnect,
  fuseHolder,
  type LoadOptions,
  load,
} from "../plan/index.ts";
import { continueNumberingAt } from "../plan/numbering.ts";
import { heavy, type Made, networkOf } from "./sample-plan.tester.ts";

beforeEach(() => continueNumberingAt(0));

const run = { oneWayFt: 10, gauge: 12, protect: 10 } as const;

/** Whether each conductor, and then each fuse of its own and each load, counts as continuous. */
function continuity(...made: readonly Made[]): readonly boolean[] {
  const { conductors, parts } = networkOf(...made);
  return [
    ...conductors.map((conductor) => conductor.run.continuous),
    ...parts.flatMap((part) => (part.kind === "fuseHolder" || part.kind === "load" ? [part.continuous] : [])),
  ];
}

/** A winch behind a fuse and a switch, each with a cable; more cables may end anywhere. */
function winch(
  options: LoadOptions = {},
  more: (bus: ReturnType<typeof busBar>) => readonly Made[] = () => [],
) {
  const bank = battery({ chemistry: "AGM", capacityAh: 100 });
  const bus = busBar({ side: "positive" });
  const feed = cable({ from: bank.positive, to: bus.stud, ...heavy });
  const fuse = fuseHolder({ ratingA: 100, on: bus.stud });
  const off = disconnect({ ratedA: 100 });
  const toSwitch = cable({ from: fuse.load, to: off.line, ...heavy });
  const winch = load({ currentA: 80, ...options });
  const toWinch = cable({ from: off.load, to: winch.positive, ...heavy });
  const back = cable({ from: winch.negative, to: bank.negative, ...heavy });
  return [bank, bus, feed, fuse, off, toSwitch, winch, toWinch, back, ...more(bus)];
}

describe("a load that does not run for hours", () => {
  it("is no continuous load for the conductors and the fuse that carry its current alone", () => {
    const [feed, toSwitch, toWinch, back, fuse, load] = continuity(...winch({ continuous: false }));
    expect({ feed, toSwitch, toWinch, back, fuse, load }).toEqual({
      // From the bus on, other loads may share the conductor.
      ...{ feed: true, toSwitch: false, toWinch: false, back: false },
      ...{ fuse: false, load: false },
    });
  });

  it("is one where nothing states it", () => {
    expect(new Set(continuity(...winch()))).toEqual(new Set([true]));
  });

  it("gives way to the own statement of a cable or fuse", () => {
    const made = winch({ continuous: false });
    made[3] = { ...made[3]!, continuous: true } as Made;
    made[5] = { ...made[5]!, continuous: true } as Made;
    const [, toSwitch, toWinch, , fuse] = continuity(...made);
    expect({ toSwitch, toWinch, fuse }).toEqual({ toSwitch: true, toWinch: false, fuse: true });
  });

  it("takes precedence over the build", () => {
    const made = winch({ continuous: true });
    const all = continuity(...made, build({ continuous: false }));
    expect(all).toEqual([false, true, true, true, true, true]);
  });

  it("does not count behind a terminal where something else is connected", () => {
    const bank = battery({ chemistry: "AGM", capacityAh: 100 });
    const winch = load({ currentA: 80, continuous: false });
    const lamp = load({ currentA: 5 });
    const toWinch = cable({ from: bank.positive, to: winch.positive, ...heavy });
    const onward = cable({ from: winch.positive, to: lamp.positive, ...heavy });
    const back = cable({ from: winch.negative, to: bank.negative, ...heavy });
    const lampBack = cable({ from: lamp.negative, to: bank.negative, ...heavy });
    expect(continuity(bank, winch, lamp, toWinch, onward, back, lampBack).slice(0, 4)).toEqual([
      true,
      true,
      false,
      true,
    ]);
  });
});

describe("a circuit", () => {
  const made = (ofCircuit: object, ofLoad: object): readonly Made[] => {
    const bank = battery({ chemistry: "AGM", capacityAh: 100 });
    const pump = load({ currentA: 5, ...ofLoad });
    return [bank, pump, circuit({ from: bank.positive, to: pump, ...run, ...ofCircuit })];
  };

  it.each<[string, object, object, readonly boolean[]]>([
    ["takes it from the load at its end", {}, { continuous: false }, [false, false, false]],
    ["gives it to the load at its end", { continuous: false }, {}, [false, false, false]],
    [
      "and its load may each state their own",
      { continuous: true },
      { continuous: false },
      [true, true, false],
    ],
  ])("%s", (_, ofCircuit, ofLoad, expected) => {
    expect(continuity(...made(ofCircuit, ofLoad))).toEqual(expected);
  });
});
