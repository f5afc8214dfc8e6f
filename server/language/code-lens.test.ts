import { expect, test } from "vitest";
import { codeLens } from "./code-lens.ts";
import { planUnderCursor } from "./feature.tester.ts";
import { sampleBuild } from "./sample-build.tester.ts";

async function lens(text: string, later?: string) {
  const { view, uri } = await planUnderCursor(text, later === undefined ? {} : { later });
  const [first, ...others] = codeLens(view, uri);
  expect(others).toEqual([]);
  return { line: first?.range.start.line, title: first?.command?.title };
}

const one = `circuit({ name: "winch", load: 40, oneWayFt: 15, gauge: 4, protect: 50, insulationC: 75 });`;

test("counts circuits and findings and names the worst drop", async () => {
  const { line, title } = await lens(
    `${one}\n${one.replace("winch", "light").replace("load: 40", "load: 4")}`,
  );
  expect(line).toBe(0);
  expect(title).toMatch(/^2 circuits · no findings · worst drop [\d.]+ %, limit 10 % \(winch\)$/);
});

test("stands over the import of the library, wherever that is", async () => {
  const text = `// A note.\n\nimport {\n  circuit,\n} from "loomwright";\n${one}`;
  expect(await lens(text)).toMatchObject({ line: 2 });
});

test("says which text it speaks of while another is half typed", async () => {
  expect((await lens(one, `${one}\ncircuit({`)).title).toMatch(/ · as of the last complete text$/);
});

test("a plan without circuits says so", async () => {
  expect((await lens("build({ voltage: 24 });")).title).toBe("no circuits yet · nothing to check");
});

test("is not shown in files that the plan imports", async () => {
  const { view } = await planUnderCursor(
    `import { circuit } from "loomwright";\nimport { size } from "./sizes.ts";\ncircuit({ load: 40, oneWayFt: 15, gauge: size, protect: 50 });`,
    { files: { "sizes.ts": "export const size = 4;\n" } },
  );
  expect(codeLens(view, "file:///plans/sizes.ts")).toEqual([]);
});

test("a plan that stopped part way is not shown as if it were whole", async () => {
  const { title } = await lens(`${one}\nthrow new Error("no such lamp");`);
  expect(title).toMatch(/^1 circuit · 1 error · worst drop .* · not checked to the end$/);
});

test("a network: what it is made of, and the worst drop, which is that of a whole way", async () => {
  expect((await lens(sampleBuild)).title).toMatch(
    /^2 circuits, 4 parts, 3 cables · no findings · worst drop 3\.6\d %, limit 10 % \(heater, from the bank\)$/,
  );
});

test("a scenario that could not be solved, and a network that could not be read, are not kept quiet", async () => {
  const tooMuch = sampleBuild.replace("continuousW: 600", "continuousW: 9_000");
  expect((await lens(tooMuch)).title).toMatch(/ · 1 of 2 scenarios not solved$/);
  const refused = sampleBuild.replace("capacityAh: 200", "capacityAh: -200");
  expect((await lens(refused)).title).toMatch(/ · network not judged$/);
});
