import { describe, expect, test } from "vitest";
import { PieceTable } from "../evaluate/fixes/piece-table.ts";
import { placingOf, whyFixed } from "./board-places.ts";
import { planUnderCursor } from "./feature.tester.ts";

const boards = `import { surface } from "loomwright";
export const wall = surface({ name: "Wall", size: { widthMm: 900, heightMm: 500 } });
export const board = surface({ name: "Board", size: { widthMm: 1_200, heightMm: 800 } });
`;
const lamp = 'load({ name: "Lamp", powerW: 8, size: { widthMm: 60, heightMm: 60 } });\n';
const inCall = 'load({ name: "Lamp", powerW: 8, size: { widthMm: 60, heightMm: 60 }, at: { on: ';

/** The text of the file with the lamp once that is on the board, or the reason why it cannot be put there. */
async function putOnBoard(van: string, files: Readonly<Record<string, string>>): Promise<string> {
  const { view, checker, workspace } = await planUnderCursor(van, {
    files: { "boards.ts": boards, ...files },
  });
  const { plan } = view;
  const { layout } = plan.judgement.placement!;
  const [part, board] = [
    layout.bodies.find(({ name }) => name === "Lamp")!,
    layout.surfaces.find(({ name }) => name === "Board")!,
  ];
  const why = whyFixed(plan, { ...layout, surfaces: [board] }, part);
  if (why !== undefined) return why;
  const place = { record: part.record, on: board.record, left: 100, top: 200, turnedDeg: 0 } as const;
  const { edits } = plan.editsOf(placingOf(plan, layout, [place])!)!;
  const { uri } = edits[0]!;
  expect(edits.every((edit) => edit.uri === uri)).toBe(true);
  const text = new PieceTable(workspace.read(uri)!.text);
  text.apply(edits);
  // The plan is the same, with the lamp at its place.
  const after = await checker.checkAs(plan.root, new Map([[uri, text.text]]));
  if (after.state !== "checked") throw new Error(`half typed: ${text.text}`);
  const at = { on: expect.objectContaining({ kind: "surface", id: board.record }), leftMm: 100, topMm: 200 };
  expect(after.records.map(({ input }) => input)).toEqual(
    plan.records.map(({ input }, record) => (record === part.record ? { ...(input as object), at } : input)),
  );
  return text.text;
}

describe("a part is put on a board of another file, and its file imports the name", () => {
  test("in an import of that file, behind the names there", async () => {
    const head =
      'import { load } from "loomwright";\nimport { wall } from "./boards.ts";\nconsole.log(wall);\n';
    expect(await putOnBoard(head + lamp, {})).toBe(
      `${head.replace("{ wall }", "{ wall, board }")}${inCall}board, leftMm: 100, topMm: 200 } });\n`,
    );
  });

  test("in an import of several lines", async () => {
    const head =
      'import { load } from "loomwright";\nimport {\n  wall,\n} from "./boards.ts";\nconsole.log(wall);\n';
    expect(await putOnBoard(head + lamp, {})).toContain(
      'import {\n  wall,\n  board,\n} from "./boards.ts";\n',
    );
  });

  test("on a line of its own behind the last import, in the hand of the file", async () => {
    const van = "import { build } from 'loomwright'\nimport './boards'\nimport './lamps/port'\nbuild({})\n";
    const port = `import { load } from 'loomwright' // the library\n${lamp.replaceAll('"', "'").replace(";", "")}`;
    expect(await putOnBoard(van, { "lamps/port.ts": port })).toContain(
      "import { load } from 'loomwright' // the library\nimport { board } from '../boards'\nload(",
    );
  });

  test("of an import without names, the path is taken", async () => {
    const head = 'import { load } from "loomwright";\nimport "./boards.js";\n';
    expect(await putOnBoard(head + lamp, {})).toContain(
      'import "./boards.js";\nimport { board } from "./boards.js";\nload(',
    );
  });

  test("under a name that the file does not use", async () => {
    const head =
      'import { load } from "loomwright";\nimport "./boards.ts";\nconst board = 3, sizes = { board2: board };\nconsole.log(sizes);\n';
    const text = await putOnBoard(head + lamp, {});
    expect(text).toContain('import { board as board2 } from "./boards.ts";\n');
    expect(text).toContain("at: { on: board2, leftMm: 100");
  });

  test("that a file exports under another name, or passes on", async () => {
    const head = 'import { load } from "loomwright";\nimport "./boards.ts";\n';
    const renamed = boards.replace("export const board", "const plank").concat("export { plank as main };\n");
    expect(await putOnBoard(head + lamp, { "boards.ts": renamed })).toContain("at: { on: main, leftMm");
  });
});

describe("a part cannot be put on a board", () => {
  const reason =
    "Cannot be put here: Board is described in boards.ts, and van.ts has no name for it: export it there, and import it here.";
  const head = 'import { load } from "loomwright";\nimport "./boards.ts";\n';

  test("that its file does not export, or makes in a loop", async () => {
    expect(
      await putOnBoard(head + lamp, { "boards.ts": boards.replace("export const board", "const board") }),
    ).toBe(reason);
    const looped = boards.replace(
      /export const board = (.*);/,
      'export let board;\nfor (const name of ["Board", "Second"]) board = surface({ name, size: { widthMm: 1_200, heightMm: 800 } });',
    );
    expect(await putOnBoard(head + lamp, { "boards.ts": looped })).toBe(reason);
  });

  test("that the plan reads only after the part: an import would change the order of its parts", async () => {
    const van =
      'import "./lamps.ts";\nimport "./boards.ts";\nimport { build } from "loomwright";\nbuild({});\n';
    const text = await putOnBoard(van, { "lamps.ts": `import { load } from "loomwright";\n${lamp}` });
    expect(text).toBe(reason.replace("van.ts", "lamps.ts"));
  });
});
