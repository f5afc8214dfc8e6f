import { readdirSync } from "node:fs";
import { fileURLToPath, pathToFileURL } from "node:url";
import { afterAll, describe, expect, test } from "vitest";
import { benchDocuments } from "../../library/documents/schedules/bench-documents.ts";
import type { NumberedWire } from "../../library/documents/schedules/wire-numbers.ts";
import type { Table } from "../../library/documents/table.ts";
import { isDevice } from "../../library/model/part-roles.ts";
import { createChecker } from "../../server/evaluate/checker.ts";
import { diskWorkspace } from "../../server/evaluate/files/disk-workspace.ts";
import { numberedWires } from "../../server/evaluate/files/kept-numbers.ts";
import { sharedSandbox } from "../../server/evaluate/shared-sandbox.tester.ts";

// Properties of the lists of any plan: of every example, the faulty one too, and of every network of a careful builder.

const house = new URL("../../", import.meta.url);
const folders = ["examples/", "tests/networks/correct/"].map((name) => new URL(name, house).href);
const workspace = diskWorkspace(folders);
// One plan never ends: it is judged as far as these many records.
const checker = createChecker(workspace, { sandbox: sharedSandbox, limits: { records: 2_000 } });
afterAll(() => checker.dispose());

const plans = checker.roots().map((root) => root.slice(house.href.length));

test("there is something to look at", () => {
  expect(readdirSync(fileURLToPath(new URL("examples/", house))).length).toBeGreaterThan(4);
  expect(plans.length).toBeGreaterThan(20);
  expect(plans.some((plan) => plan.startsWith("examples/faulty-workshop/"))).toBe(true);
});

describe.each(plans)("%s", (plan) => {
  test("every conductor once, no figure that is none, and sums that agree", async () => {
    const outcome = await checker.check(pathToFileURL(fileURLToPath(new URL(plan, house))).href);
    if (outcome.state !== "checked") throw new Error(`${plan} is ${outcome.state}`);
    const { numbered } = numberedWires(outcome, workspace);
    const { wires } = numbered;
    const tables = new Map(benchDocuments(outcome.judgement, numbered).map((table) => [table.id, table]));
    for (const table of tables.values()) expectSound(table);
    const { model, network } = outcome.judgement;
    const alone = model.circuits.filter(({ inNetwork }) => !inNetwork || !network).length;
    expect(wires).toHaveLength((network?.network.conductors.length ?? 0) + 2 * alone);

    expect(column(tables, "wire-schedule", "number")).toEqual(
      wires.map(({ number, kept }) => (kept ? { value: number, text: expect.any(String) } : `${number}*`)),
    );
    // One whose length is not known is in no cut list, which names it.
    const known = wires.filter(({ wire }) => wire.cutLengthM !== undefined);
    const cutListNotes = tables.get("cut-list")!.notes.join("\n");
    for (const { wire } of wires)
      if (!known.some((one) => one.wire === wire)) expect(cutListNotes).toContain(wire.name);
    const neededM = sum(known.map(({ wire }) => wire.cutLengthM! * wire.size.parallel));
    expect(sum(numbersIn(tables, "cut-list", "lengthM"))).toBeCloseTo(neededM, 6);
    expect(sum(numbersIn(tables, "cut-list", "pieces"))).toBe(pieces(known));
    expect(sum(numbersIn(tables, "spools", "usedM"))).toBeCloseTo(neededM, 6);
    expect(sum(numbersIn(tables, "spools", "spoolM"))).toBeCloseTo(
      sum(
        numbersIn(tables, "spools", "usedM").filter(
          (_, row) => column(tables, "spools", "spoolM")[row] !== null,
        ),
      ) + sum(numbersIn(tables, "spools", "leftM")),
      6,
    );
    expect(sum(numbersIn(tables, "labels", "count"))).toBe(2 * pieces(wires));
    const devices = [
      ...wires.flatMap(({ wire }) => [wire.from, wire.to]).filter(({ protection }) => protection),
      ...(network?.network.parts ?? []).filter(isDevice),
    ];
    expect(tables.get("first-power-protection")!.rows).toHaveLength(devices.length);
    expect(
      column(tables, "fuse-map", "ratingA").filter((cell) => cell !== null && typeof cell !== "string"),
    ).toHaveLength(devices.length);
  });
});

function expectSound({ columns, rows, notes }: Table): void {
  // One plan has thousands of conductors: only the wrong rows are passed to `expect`.
  expect(rows.filter((row) => row.length !== columns.length)).toEqual([]);
  const isUnsound = (cell: Table["rows"][number][number]) =>
    cell !== null &&
    (/NaN|undefined|null|Infinity|\[object|^$/.test(typeof cell === "string" ? cell : cell.text) ||
      (typeof cell !== "string" && !Number.isFinite(cell.value)));
  expect(rows.flatMap((row) => row.filter(isUnsound))).toEqual([]);
  for (const note of notes) expect(note).not.toMatch(/NaN|undefined|Infinity|\[object|\bsafe\b/i);
}

function column(tables: ReadonlyMap<string, Table>, id: string, name: string) {
  const { columns, rows } = tables.get(id)!;
  const index = columns.findIndex((one) => one.id === name);
  expect(index).toBeGreaterThanOrEqual(0);
  return rows.map((row) => row[index]!);
}

/** Rows without a number count as zero. */
function numbersIn(tables: ReadonlyMap<string, Table>, id: string, name: string): number[] {
  return column(tables, id, name).map((cell) => (cell === null || typeof cell === "string" ? 0 : cell.value));
}

function pieces(wires: readonly NumberedWire[]): number {
  return sum(wires.map(({ wire }) => wire.size.parallel));
}

function sum(all: readonly number[]): number {
  return all.reduce((total, one) => total + one, 0);
}
