import type { Judgement } from "../../judge.ts";
import { metresPerFoot } from "../../model/length-limits.ts";
import type { BoardUnit, LengthUnit } from "../../model/length-unit.ts";
import { boardUnitOf } from "../../model/unit-of-plan.ts";
import { cutList, spoolList } from "../schedules/cut-list.ts";
import { devicesOf } from "../schedules/devices.ts";
import { partsList } from "../schedules/parts-list.ts";
import { numberWires } from "../schedules/wire-numbers.ts";
import { readWireNumbers } from "../schedules/wire-numbers-file.ts";
import { wiresOf } from "../schedules/wires.ts";
import type { Table } from "../table.ts";

/** A change in the amount of one thing to buy. */
export interface PurchaseChange {
  /** Not yet fit to be shown: colours and some names are words of the plan. */
  readonly what: string;
  /** Pieces, or a length as it is cut, in the unit of the later plan. */
  readonly unit: "pieces" | "ft" | "m";
  readonly before: number;
  readonly after: number;
}

/**
 * Purchases beyond those of the plan before, or left over from them. Made from the lists for buying, which it can therefore never
 * contradict: wire as it is cut, spools, parts, protective devices with their spares, fittings. The devices that circuits feed
 * are reported as circuits. `renamed`: names before to names after.
 */
export function purchaseChanges(
  before: Judgement,
  after: Judgement,
  renamed: ReadonlyMap<string, string>,
): PurchaseChange[] {
  const { lengthUnit = "m" } = wiresOf(after)[0] ?? wiresOf(before)[0] ?? {};
  const boardUnit = boardUnitOf(after.placement?.layout);
  const units = { lengthUnit, boardUnit };
  const [old, now] = [purchases(before, renamed, units), purchases(after, new Map(), units)];
  return [...new Set([...now.keys(), ...old.keys()])]
    .map((what): PurchaseChange & Pick<Purchase, "place"> => {
      const [one, other] = [old.get(what), now.get(what)];
      const { unit, place } = (other ?? one) as Purchase;
      return { what, unit, place, before: one?.amount ?? 0, after: other?.amount ?? 0 };
    })
    .filter((change) => Math.abs(change.after - change.before) > leastAmount)
    .sort((one, other) => one.place - other.place || (one.what < other.what ? -1 : 1))
    .map(({ place: _, ...change }) => change);
}

interface Purchase {
  /** Position of its list. */
  readonly place: number;
  readonly unit: PurchaseChange["unit"];
  amount: number;
}

/** Lengths are cut in whole inches and centimetres; less than this is the last digit of a sum. */
const leastAmount = 1e-6;

function purchases(
  plan: Judgement,
  renamed: ReadonlyMap<string, string>,
  { lengthUnit, boardUnit }: { readonly lengthUnit: LengthUnit; readonly boardUnit: BoardUnit },
): ReadonlyMap<string, Purchase> {
  const { bench } = plan.model.build;
  const { wires } = numberWires(wiresOf(plan), readWireNumbers(undefined));
  const found = new Map<string, Purchase>();
  const add = (what: string, place: number, unit: Purchase["unit"], amount: number) => {
    const known = found.get(what) ?? { place, unit, amount: 0 };
    known.amount += amount;
    found.set(what, known);
  };
  for (const row of rowsOf(cutList(wires, bench))) {
    const lengthM = row.amount("lengthM");
    const what = `wire, ${row.texts("size", "colour", "insulation")}`;
    add(what, 0, lengthUnit, lengthUnit === "ft" ? lengthM / metresPerFoot : lengthM);
  }
  // Wire that is bought by length is compared by its length alone.
  for (const row of rowsOf(spoolList(wires, bench)))
    if (!/\d [fm]t?, by the/.test(row.text("spool")))
      add(`spool, ${row.texts("size", "colour", "insulation", "spool")}`, 1, "pieces", 1);
  for (const row of rowsOf(partsList(plan, devicesOf(plan, wires), wires, boardUnit))) {
    const group = row.text("group");
    if (group === "devices") continue;
    const item = renamed.get(row.text("item")) ?? row.text("item");
    const rest = row.texts("details", "standard").replace(/\bnot stated$/, "family not stated");
    // A fitting cannot be bought before the plan states it.
    if (item === "fitting, not stated") continue;
    add([item, rest].filter(Boolean).join(", "), 2, "pieces", row.amount("quantity"));
  }
  return found;
}

interface Row {
  text(column: string): string;
  /** Those that are not empty, as one text. */
  texts(...columns: readonly string[]): string;
  amount(column: string): number;
}

function rowsOf({ columns, rows }: Table): Row[] {
  const places = new Map(columns.map(({ id }, index) => [id, index]));
  return rows.map((cells) => {
    const cell = (column: string) => cells[places.get(column) ?? -1] ?? null;
    const text = (column: string) => {
      const found = cell(column);
      return typeof found === "string" ? found : (found?.text ?? "");
    };
    return {
      text,
      texts: (...wanted) => wanted.map(text).filter(Boolean).join(", "),
      amount(column) {
        const found = cell(column);
        return found === null || typeof found === "string" ? 0 : found.value;
      },
    };
  });
}
