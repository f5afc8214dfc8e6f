// A keystroke in a plan with boards, whose lengths follow from them, beside the same keystroke in the plan with stated lengths; and the
// answer to a part that is dragged beside that keystroke: `node tests/bench/boards-bench.mjs`, or as a part of `npm run bench`.

import { fileURLToPath } from "node:url";
import { inTurns, withBenchChecker } from "./in-turns.mjs";

/** Median ratios, and times of a step in ms. `large`: 200 conductors over six surfaces. */
export function boardsBench() {
  return withBenchChecker(async (checker) => {
    const small = { circuits: 20, surfaces: 2 };
    const stated = keystrokes(checker, "stated", planText({ ...small, placed: false }));
    const keystroke = await inTurns(
      keystrokes(checker, "placed", planText({ ...small, placed: true })),
      stated,
    );
    const drag = await inTurns(await drags(checker, "dragged", planText({ ...small, placed: true })), stated);
    const large = planText({ circuits: 99, surfaces: 6, placed: true });
    const { firstMs: dragMs, secondMs: keystrokeMs } = await inTurns(
      await drags(checker, "large-dragged", large),
      keystrokes(checker, "large", large),
    );
    return { keystroke, drag, large: { dragMs, keystrokeMs } };
  }, boardsOf);
}

const boardsOf = `
export { boardsView } from "./language/boards-view.ts";
export { viewPlan } from "./language/plan-in-view.ts";
export { TextDocument } from "vscode-languageserver-textdocument";
`;

/** A builder types another digit each time. */
function keystrokes(checker, name, text) {
  const uri = `file:///bench/${name}.ts`;
  return (step) =>
    checker.check(uri, text.replace("load: 3, /* edited */", `load: ${1 + (step % 9)}, /* edited */`));
}

/** The first part is dragged on by a step each time, and its effects are shown. */
async function drags(checker, name, text) {
  const uri = `file:///bench/${name}.ts`;
  const plan = await checker.check(uri, text);
  const document = checker.TextDocument.create(uri, "typescript", 1, text);
  const view = checker.viewPlan({
    plan,
    checked: () => document,
    now: () => document,
    client: () => ({ uri, version: 1 }),
  });
  return async (step) => {
    const moved = text.replace("leftMm: 40, /* dragged */", `leftMm: ${45 + 5 * (step % 9)}, /* dragged */`);
    checker.boardsView(view, { conductors: false, tried: await checker.checkAs(uri, moved) });
  };
}

/** A bank, two bus bars and circuits, on boards that channels connect. The figures are invented. */
function planText({ circuits, surfaces, placed }) {
  const boards = Array.from(
    { length: surfaces },
    (_, index) => `const board${index} = surface({ size: { widthMm: 1500, heightMm: 900 } });
channel({ on: board${index}, path: [{ leftMm: 0, topMm: 450 }, { leftMm: 1500, topMm: 450 }] });
${index > 0 ? `channel({ from: { on: board${index - 1}, leftMm: 1500, topMm: 450 }, to: { on: board${index}, leftMm: 0, topMm: 450 }, lengthM: 0.4 });` : ""}`,
  );
  const at = (surface, left, top) =>
    placed ? `at: { on: board${surface}, leftMm: ${left} topMm: ${top} },` : "";
  const length = (metres) => (placed ? "" : `lengthM: ${metres},`);
  const oneWay = (metres) => (placed ? "" : `oneWayM: ${metres},`);
  const words = "battery, build, busBar, cable, channel, circuit, surface";
  const small = "size: { widthMm: 60, heightMm: 40 },";
  return `import { ${words} } from "loomwright";
build({ name: "measured build", insulationC: 105 });
${placed ? boards.join("\n") : ""}
const house = battery({ chemistry: "LiFePO4", capacityAh: 400, internalMilliohm: 2, size: { widthMm: 400, heightMm: 220 }, ${at(0, "40, /* dragged */", 560)} });
const plus = busBar({ side: "positive", size: { widthMm: 200, heightMm: 50 }, ${at(0, "700,", 560)} });
const minus = busBar({ side: "negative", size: { widthMm: 200, heightMm: 50 }, ${at(0, "700,", 700)} });
cable({ from: house.positive, to: plus.stud, ${length(1)} gauge: "1/0", protect: 250 });
cable({ from: house.negative, to: minus.stud, ${length(1)} gauge: "1/0" });
const on = { from: plus.stud, returnTo: minus.stud, gauge: 12, protect: 15 } as const;
circuit({ ...on, name: "first", ${oneWay(2)} load: 3, /* edited */ ${small} ${at(0, "20,", 20)} });
${Array.from({ length: circuits - 1 }, (_, index) => {
  const [surface, place] = [(index + 1) % surfaces, Math.floor((index + 1) / surfaces)];
  const spot = at(surface, `${20 + 90 * (place % 15)},`, 20 + 60 * Math.floor(place / 15));
  return `circuit({ ...on, name: "circuit ${index}", ${oneWay(2 + (index % 5))} load: 2, ${small} ${spot} });`;
}).join("\n")}
`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const { keystroke, drag, large } = await boardsBench();
  for (const [name, { ratio, firstMs, secondMs }] of Object.entries({ keystroke, drag }))
    console.log(
      `${name}: ${firstMs.toFixed(1)} ms, ${secondMs.toFixed(1)} ms of a keystroke with stated lengths, ${ratio.toFixed(2)}`,
    );
  console.log(
    `200 conductors over six surfaces: ${large.dragMs.toFixed(1)} ms a drag, ${large.keystrokeMs.toFixed(1)} ms a keystroke`,
  );
}
