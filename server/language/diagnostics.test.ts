import { describe, expect, test } from "vitest";
import { DiagnosticSeverity } from "vscode-languageserver";
import { diagnostics, rulePage } from "./diagnostics.ts";
import { planUnderCursor } from "./plan-under-cursor.ts";

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
    ]);
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
    expect(accepted?.message).toMatch(/^accepted: bench test\. /);
  });

  test("a property that does not exist is faded", async () => {
    const { view, uri } = await planUnderCursor(tooThin.replace("insulationC", "insulation"));
    const unknown = diagnostics(view, uri).find(({ code }) => code === "plan/invalid-value");
    expect(unknown?.message).toContain("insulation");
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
    ]);
    expect(await drawn(tooThin, tooThin.replace("gauge: 12", "gauge: "))).toEqual([
      `${DiagnosticSeverity.Error} protection/above-conductor on 50`,
    ]);
  });
});
