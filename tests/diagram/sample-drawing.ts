import { drawDiagram } from "../../library/documents/diagram/draw-diagram.ts";
import { layOut } from "../../library/documents/diagram/lay-out.ts";
import { judge } from "../../library/judge.ts";
import { type Made, recordsOf } from "../../library/model/sample-plan.tester.ts";
import {
  battery,
  build,
  busBar,
  cable,
  circuit,
  dcDcCharger,
  fusePanel,
  scenario,
} from "../../library/plan/index.ts";
import { continueNumberingAt } from "../../library/plan/numbering.ts";

/** A drawing that needs no files, to be repeated in another process. */
export async function sampleDrawing(): Promise<string> {
  continueNumberingAt(0);
  const made = [
    build({ name: "tool cart", voltage: 12 }),
    battery({ name: "cart battery", chemistry: "AGM", capacityAh: 80 }),
  ] as const;
  const bank = made[1];
  const bus = busBar({ name: "bus", side: "positive" });
  const charger = dcDcCharger({ name: "charger", outputA: 20 });
  const records: Made[] = [
    ...made,
    bus,
    charger,
    cable({ name: "feed", from: bank.positive, to: bus.stud, lengthM: 1, mm2: 16, protect: 80 }),
    cable({
      name: "charge",
      from: charger.outputPositive,
      to: bus.stud,
      lengthM: 1,
      mm2: 6,
      protectFarEnd: 30,
    }),
    cable({ name: "charge return", from: charger.outputNegative, to: bank.negative, lengthM: 1, mm2: 6 }),
  ];
  const panel = fusePanel({ name: "panel", positions: 4 });
  records.push(
    panel,
    circuit({
      name: "feeder",
      from: bus.stud,
      returnTo: bank.negative,
      to: panel,
      oneWayM: 2,
      mm2: 10,
      protect: 40,
    }),
    circuit({ name: "lamp", from: panel.branch, load: 2, oneWayM: 4, mm2: 1.5, protect: 3 }),
    circuit({ name: "fan", from: panel.branch, load: 3, oneWayM: 5, mm2: 1.5, protect: 5 }),
    scenario({ name: "all on" }),
  );
  const plan = judge(recordsOf(records), []);
  if (!plan.network) throw new Error("the sample has no network");
  const outcome = await drawDiagram(plan, { view: "wiring", medium: "paper", scenario: 0 }, layOut);
  if (!outcome.drawn) throw new Error(outcome.why);
  return outcome.drawing.svg;
}
