import type { Judgement } from "../../judge.ts";
import { kindInWords } from "../../rules/part-in-words.ts";
import { deviceKind, sizeInWords } from "../../rules/sized-fix.ts";
import { metresPerFoot } from "../../rules/written-at.ts";
import { isOfCircuit } from "../network-summary.ts";
import { deviceInList } from "../schedules/cells.ts";
import { fittingInWords } from "../schedules/fittings.ts";
import { type Wire, wiresOf } from "../schedules/wires.ts";
import { textOf } from "./changed-properties.ts";
import { partProperties } from "./properties-of-parts.ts";

/** More or less of one thing to buy. */
export interface PurchaseChange {
  /** Not yet fit to be shown: colours and chemistries are words of the plan. */
  readonly what: string;
  /** Pieces, or a length as it is cut: in feet of AWG sizes, in metres of metric ones. */
  readonly unit: "pieces" | "ft" | "m";
  readonly before: number;
  readonly after: number;
}

/**
 * What has to be bought beyond, or is left over from, what the plan before asked for: conductor by size, insulation and colour as
 * it is cut, protective devices with the build's spares, what conductors are ended with, and parts. In that order.
 */
export function purchaseChanges(before: Judgement, after: Judgement): PurchaseChange[] {
  const [old, now] = [purchases(before), purchases(after)];
  const whats = new Set([...now.keys(), ...old.keys()]);
  return [...whats]
    .map((what): PurchaseChange & Pick<Purchase, "group"> => {
      const { unit, group } = (now.get(what) ?? old.get(what))!;
      return { what, unit, group, before: old.get(what)?.amount ?? 0, after: now.get(what)?.amount ?? 0 };
    })
    .filter((change) => Math.abs(change.after - change.before) > leastAmount)
    .sort((one, other) => one.group - other.group || (one.what < other.what ? -1 : 1))
    .map(({ group: _, ...change }) => change);
}

interface Purchase {
  readonly group: 0 | 1 | 2 | 3;
  readonly unit: PurchaseChange["unit"];
  amount: number;
}

/** Feet or metres: lengths are cut in whole inches and centimetres, and below that it is the sum's last digit. */
const leastAmount = 1e-6;

function purchases(plan: Judgement): ReadonlyMap<string, Purchase> {
  const found = new Map<string, Purchase>();
  const add = (what: string, amount: number, kind: Pick<Purchase, "group" | "unit">) => {
    const known = found.get(what) ?? { ...kind, amount: 0 };
    known.amount += amount;
    found.set(what, known);
  };
  const pieces = (group: Purchase["group"]) => ({ group, unit: "pieces" }) as const;
  const spared = new Set<string>();
  for (const wire of wiresOf(plan)) {
    const { size, cutLengthM } = wire;
    const lengthM = cutLengthM * size.parallel;
    if (size.system === "awg") add(wireInWords(wire), lengthM / metresPerFoot, { group: 0, unit: "ft" });
    else add(wireInWords(wire), lengthM, { group: 0, unit: "m" });
    for (const { protection, termination } of [wire.from, wire.to]) {
      if (termination !== undefined)
        add(fittingFor(wire, fittingInWords(termination)), size.parallel, pieces(2));
      if (!protection) continue;
      const device = deviceInList(protection);
      add(device, 1, pieces(1));
      if (deviceKind(protection) === "fuse" && !spared.has(device))
        add(device, plan.model.build.bench.spareFuses, pieces(1));
      spared.add(device);
    }
  }
  for (const part of plan.network?.network.parts ?? []) {
    if (isOfCircuit(part)) continue;
    const told = partProperties(part, plan.network!.network).flatMap(({ id, value }) =>
      bought.has(id) && value.as !== "parts" ? [textOf(value)] : [],
    );
    add([kindInWords(part), ...told].join(", "), 1, pieces(3));
  }
  return found;
}

/** By what one part is told from another in a shop; what it is used for, and how long, is no part of that. */
const bought: ReadonlySet<string> = new Set([
  "chemistry",
  "nominalV",
  "capacityAh",
  "ratedA",
  "studs",
  "positions",
  "continuousW",
  "outputA",
  "outputV",
  "maxInputV",
]);

/** "10 AWG, 105 °C, red": one wire, however many lie side by side. */
function wireInWords({ size, insulationC, colour }: Wire): string {
  return [`${sizeInWords({ ...size, parallel: 1 })} conductor`, `${insulationC} °C`, colour]
    .filter((word) => word !== "")
    .join(", ");
}

function fittingFor({ size }: Wire, fitting: string): string {
  return `${fitting}, for ${sizeInWords({ ...size, parallel: 1 })}`;
}
