import { beforeEach, describe, expect, it } from "vitest";
import {
  alternator,
  battery,
  build,
  cable,
  circuit,
  dcDcCharger,
  disconnect,
  fusePanel,
  inverter,
  load,
  part,
  shunt,
} from "../plan/index.ts";
import { continueNumberingAt } from "../plan/numbering.ts";
import { heavy, light, networkOf } from "./sample-plan.tester.ts";

beforeEach(() => continueNumberingAt(0));

const house = () => battery({ name: "House", chemistry: "AGM", capacityAh: 100 });

describe("nominal voltages follow the batteries", () => {
  it("on both sides of a charger between two systems", () => {
    const settings = build({ voltage: 24 });
    const starter = battery({ chemistry: "flooded lead-acid", capacityAh: 90, nominalV: 12 });
    const bank = battery({ chemistry: "AGM", capacityAh: 200 });
    const charger = dcDcCharger({ outputA: 15 });
    const engine = alternator({ ratedA: 90 });
    const toCharger = circuit({ from: starter.positive, to: charger, ...light });
    const toStarter = circuit({ from: engine.positive, to: starter, ...light });
    const toBank = cable({ from: charger.outputPositive, to: bank.positive, ...heavy });
    const back = cable({ from: charger.outputNegative, to: bank.negative, ...heavy });
    const lamp = circuit({ from: starter.positive, load: 2, ...light });
    const heater = circuit({ from: bank.positive, loadW: 240, ...light });
    const { parts, conductors } = networkOf(
      settings,
      starter,
      bank,
      charger,
      engine,
      toCharger,
      toStarter,
      toBank,
      back,
      lamp,
      heater,
    );
    expect(parts.find(({ kind }) => kind === "dcDcCharger")).toMatchObject({
      outputV: 28.8,
      inputMinV: 10.5,
    });
    expect(parts.find(({ kind }) => kind === "alternator")).toMatchObject({ outputV: 14.4 });
    expect(parts.filter(({ kind }) => kind === "load")).toMatchObject([{ systemV: 12 }, { systemV: 24 }]);
    expect(conductors.map(({ run }) => run.systemV)).toEqual([12, 12, 12, 12, 24, 24, 12, 12, 24, 24]);
    expect(conductors.at(-1)?.run.loadA).toBe(10);
  });

  it("through batteries in series, switches, shunts, panels and parts", () => {
    const [lower, upper] = [house(), house()];
    const link = cable({ from: lower.positive, to: upper.negative, ...heavy });
    const main = disconnect({ ratedA: 100 });
    const meter = shunt({ ratedA: 100 });
    const relay = part({ terminals: ["in", "out"], joins: [{ between: ["in", "out"] }] });
    const panel = fusePanel({ positions: 2 });
    const lamp = circuit({ from: panel.branch, load: 2, ...light });
    const { conductors } = networkOf(
      lower,
      upper,
      link,
      main,
      meter,
      relay,
      panel,
      lamp,
      cable({ from: upper.positive, to: main.line, ...heavy }),
      cable({ from: main.load, to: relay.in, ...heavy }),
      cable({ from: relay.out, to: panel.feed, ...heavy }),
      cable({ from: lower.negative, to: meter.batterySide, ...heavy }),
      cable({ from: meter.systemSide, to: panel.negative, ...heavy }),
    );
    expect(conductors.map(({ run }) => run.systemV)).toEqual(conductors.map(() => 24));
  });

  it("a charger that feeds what no battery does tells by its own voltage", () => {
    const settings = build({ voltage: 24 });
    const charger = dcDcCharger({ outputA: 15, outputV: 13.8 });
    const lamp = load({ currentA: 2 });
    const { parts } = networkOf(
      settings,
      charger,
      lamp,
      circuit({ from: charger.outputPositive, to: lamp, ...light }),
    );
    expect(parts[1]).toMatchObject({ systemV: 12 });
  });

  it("what hangs nowhere has the build's", () => {
    const { parts } = networkOf(build({ voltage: 48 }), inverter({ continuousW: 500 }), house());
    expect(parts).toMatchObject([{ cutOffV: 42 }, { nominalV: 48 }]);
  });

  it("a battery across another one, the wrong way round, still has an answer", () => {
    const [one, other] = [house(), house()];
    const { parts } = networkOf(
      one,
      other,
      cable({ from: one.positive, to: other.negative, ...heavy }),
      cable({ from: other.positive, to: one.negative, ...heavy }),
      circuit({ from: one.positive, load: 2, ...light }),
    );
    expect(parts[2]).toMatchObject({ systemV: 12 });
  });
});
