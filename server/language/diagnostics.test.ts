import { describe, expect, test } from "vitest";
import { DiagnosticSeverity, DiagnosticTag } from "vscode-languageserver-types";
import { diagnostics, rulePage } from "./diagnostics.ts";
import { planUnderCursor } from "./feature.tester.ts";

const tooThin = `circuit({ name: "winch", load: 40, oneWayFt: 15, gauge: 12, protect: 50, insulationC: 105 });`;

async function drawn(text: string, later?: string): Promise<string[]> {
  const { view, uri, workspace } = await planUnderCursor(text, later === undefined ? {} : { later });
  const document = workspace.document(uri)!;
  return diagnostics(view, uri).map(
    ({ range, severity, code }) => `${severity} ${code} on ${document.getText(range)}`,
  );
}

describe("diagnostics", () => {
  test("sit on the value that is wrong, with severity and rule", async () => {
    expect(await drawn(tooThin)).toEqual([
      `${DiagnosticSeverity.Error} protection/above-conductor on 50`,
      `${DiagnosticSeverity.Warning} conductor/voltage-drop on 12`,
      `${DiagnosticSeverity.Information} conductor/terminal-temperature on 12`,
    ]);
  });

  test("of a terminal that a part does not have leave out the list that the compiler's own report leads to", async () => {
    const plan = `import { battery, busBar, cable } from "loomwright";
const house = battery({ chemistry: "AGM", capacityAh: 90 });
const bar = busBar({});
cable({ from: house.positive, to: bar.post, lengthFt: 2, gauge: 4 });`;
    const { view, uri } = await planUnderCursor(plan);
    const effect =
      "Currents, voltages and faults of the network connected with it are not judged until this is corrected.";
    expect(diagnostics(view, uri).map(({ message }) => message)).toEqual([
      `van.ts line 4: to is not a terminal of a part: nothing. ${effect}`,
    ]);
    expect(view.plan.findings.map(({ message }) => message)).toEqual([
      `to is not a terminal of a part: nothing. Allowed: bar.stud. ${effect}`,
    ]);
  });

  test("of thousands of one rule the worst are shown, and how many more there are", async () => {
    const many = Array.from(
      { length: 150 },
      (_, index) => `circuit({ name: "${index}", load: 2, oneWayFt: 5, gauge: 14, insulationC: 75 });`,
    );
    const { view, uri } = await planUnderCursor(`${many.join("\n")}\n${tooThin}`);
    const shown = diagnostics(view, uri);
    const missing = shown.filter(({ code }) => code === "protection/missing");
    expect(missing).toHaveLength(101);
    expect(missing.at(-1)).toMatchObject({ severity: DiagnosticSeverity.Error });
    expect(missing.at(-1)?.message).toMatch(/^100: .* And 49 more of this kind in this file; /);
    expect(missing.at(-1)?.range.start.line).toBe(101);
    expect(shown.some(({ code }) => code === "conductor/voltage-drop")).toBe(true);
    expect(view.plan.findings.filter(({ finding }) => finding.rule === "protection/missing")).toHaveLength(
      150,
    );
  });

  test("begin with the name of the circuit, also where one value sets several", async () => {
    const { view, uri } = await planUnderCursor(
      `for (const name of ["lamp", "fan"]) circuit({ name, load: 2, oneWayFt: 5, gauge: 14, insulationC: 75 });`,
    );
    expect(diagnostics(view, uri).map(({ message }) => message)).toEqual([
      expect.stringMatching(/^lamp: no fuse or breaker is given .* Likewise: fan\.$/),
    ]);
  });

  test.each([
    ["the build", `${tooThin}\nbuild({ voltage: "24" as any });`],
    ["the plan", `${tooThin}\nthrow new Error("stop");`],
  ])("speak of %s without a name", async (_what, text) => {
    const { view, uri } = await planUnderCursor(text);
    for (const { code, message } of diagnostics(view, uri)) {
      if (String(code).startsWith("plan/")) expect(message).not.toMatch(/^the (build|plan):/);
    }
    expect(diagnostics(view, uri).some(({ code }) => String(code).startsWith("plan/"))).toBe(true);
  });

  test("link to the page of the rule in this installation", async () => {
    const { view, uri } = await planUnderCursor(tooThin);
    for (const { code, codeDescription } of diagnostics(view, uri)) {
      expect(codeDescription?.href).toBe(rulePage(String(code)));
      expect(codeDescription?.href).toMatch(/^file:\/\/.*\/dist\/rules\/\w+\/[\w-]+\.md$/);
    }
  });

  test("an accepted finding is shown with the reason, and never as an error", async () => {
    const { view, uri } = await planUnderCursor(
      tooThin.replace("insulationC", 'accept: { "protection/above-conductor": "bench test" }, insulationC'),
    );
    const accepted = diagnostics(view, uri).find(({ code }) => code === "protection/above-conductor");
    expect(accepted?.severity).toBe(DiagnosticSeverity.Information);
    expect(accepted?.message).toMatch(/^winch, accepted: bench test\. The /);
  });

  test.each([
    ["a misspelt property", tooThin.replace("insulationC", "insulation"), [DiagnosticTag.Unnecessary]],
    ["a property nobody knows", tooThin.replace("load: 40", "load: 40, zzz: 1"), [DiagnosticTag.Unnecessary]],
    [
      "a property of protection",
      tooThin.replace("50", "{ ratingA: 50, slow: true }"),
      [DiagnosticTag.Unnecessary],
    ],
    ["a value that is wrong", tooThin.replace("load: 40", "load: -40"), undefined],
  ])("only what has no effect is faded: %s", async (_what, text, tags) => {
    const { view, uri } = await planUnderCursor(text);
    const invalid = diagnostics(view, uri).filter(({ code }) => code === "plan/invalid-value");
    expect(invalid.map((diagnostic) => diagnostic.tags)).toEqual([tags]);
  });

  test("what a finding points to is related information", async () => {
    const { view, uri } = await planUnderCursor(
      `const size = 14;\nfor (const name of ["a", "b"]) circuit({ name, load: 40, oneWayFt: 15, gauge: size, protect: 50 });`,
    );
    for (const { range, relatedInformation = [] } of diagnostics(view, uri)) {
      for (const { location, message } of relatedInformation) {
        expect(location.uri).toBe(uri);
        expect(location.range).not.toEqual(range);
        expect(message).not.toBe("");
      }
    }
    expect(diagnostics(view, uri).some(({ relatedInformation }) => relatedInformation?.length)).toBe(true);
  });

  test("a name cannot reorder or hide anything in a message", async () => {
    const { view, uri } = await planUnderCursor(
      tooThin.replace('"winch"', '"w\u202Einch\\u200B"').replace("load: 40", 'load: "4\u202E0" as any'),
    );
    expect(JSON.stringify(diagnostics(view, uri))).not.toMatch(/[\u202E\u200B]/);
  });

  test("are carried along while the text is half typed, and dropped where it was touched", async () => {
    expect(await drawn(tooThin, `\n\ncircuit({ ${tooThin}`)).toEqual([
      `${DiagnosticSeverity.Error} protection/above-conductor on 50`,
      `${DiagnosticSeverity.Warning} conductor/voltage-drop on 12`,
      `${DiagnosticSeverity.Information} conductor/terminal-temperature on 12`,
    ]);
    expect(await drawn(tooThin, tooThin.replace("gauge: 12", "gauge: "))).toEqual([
      `${DiagnosticSeverity.Error} protection/above-conductor on 50`,
    ]);
  });
});
