import { createHash } from "node:crypto";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { Ajv } from "ajv";
import addFormats from "ajv-formats";
import { afterEach, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { version } from "../../../library/package.json";
import { rules } from "../../../library/rules/registry.ts";
import { checkPlans } from "../../../server/command/check-plans.ts";
import { sarifReport } from "../../../server/command/sarif-report.ts";
import { sharedSandbox } from "../../../server/evaluate/shared-sandbox.tester.ts";

// OASIS Standard "Static Analysis Results Interchange Format (SARIF) Version 2.1.0", 27 March 2020, its JSON schema.
const schemaText = readFileSync(new URL("sarif-2.1.0-rtm.5.json", import.meta.url), "utf8");
const house = fileURLToPath(new URL("../../..", import.meta.url));

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "loomwright-sarif-"));
  write("package.json", "{}");
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const head = 'import { circuit } from "loomwright";\n';

describe("the schema", () => {
  test("is the one that its page speaks of", () => {
    expect(createHash("sha256").update(schemaText).digest("hex")).toBe(
      "2d99159ae54a3eea97f81781cff48780548657c35949f4b7f25e99a2ba4de4f8",
    );
  });

  test.each([
    [
      "a line 0",
      (log: Log) =>
        Object.assign(log.runs[0]!.results[0]!.locations[0]!.physicalLocation.region, { startLine: 0 }),
    ],
    ["a level of our own", (log: Log) => Object.assign(log.runs[0]!.results[0]!, { level: "hint" })],
    ["a property of our own", (log: Log) => Object.assign(log.runs[0]!.results[0]!, { loomwright: 1 })],
    [
      "an address that is none",
      (log: Log) => Object.assign(log.runs[0]!.artifacts[0]!.location, { uri: "a b.ts" }),
    ],
    ["no tool", (log: Log) => Object.assign(log.runs[0]!, { tool: undefined })],
  ])("refuses %s", async (_, spoil) => {
    write("plan.ts", `${head}circuit({ name: "winch", load: 48, oneWayFt: 10, gauge: 12, protect: 45 });\n`);
    const { log } = await sarif();
    expect(complaints(log)).toEqual([]);
    spoil(log);
    expect(complaints(JSON.parse(JSON.stringify(log)))).not.toEqual([]);
  });
});

describe("every example", () => {
  let examples: Awaited<ReturnType<typeof sarif>>;
  beforeAll(async () => {
    examples = await sarif(join(house, "examples"));
  });

  test("is a valid log, in which everything that is named is there", () => {
    const { log, plans } = examples;
    expect(complaints(log)).toEqual([]);
    const [run] = log.runs;
    expect(run!.results.length).toBe(plans.flatMap(({ findings }) => findings).length);
    expect(run!.results.length).toBeGreaterThan(rules.length);
    for (const result of run!.results) {
      expect(run!.tool.driver.rules[result.ruleIndex]!.id).toBe(result.ruleId);
      for (const { physicalLocation } of [...result.locations, ...(result.relatedLocations ?? [])])
        expectToBeThere(run!, physicalLocation, join(house, "examples"));
      for (const { artifactLocation } of (result.fixes ?? []).flatMap(
        ({ artifactChanges }) => artifactChanges,
      ))
        expect(run!.artifacts[artifactLocation.index]!.location.uri).toBe(artifactLocation.uri);
    }
    const prints = run!.results.map(({ partialFingerprints }) => Object.values(partialFingerprints)[0]);
    expect(new Set(prints).size).toBe(prints.length);
  });

  test("some plans there cannot be evaluated to their end, and the log says so", () => {
    const { log, plans } = examples;
    const failed = plans.filter(({ evaluated }) => !evaluated);
    const [{ executionSuccessful, toolExecutionNotifications }] = log.runs[0]!.invocations;
    expect(failed.length).toBeGreaterThan(0);
    expect(executionSuccessful).toBe(false);
    expect(toolExecutionNotifications.map(({ associatedRule }) => associatedRule.id).sort()).toEqual(
      failed
        .flatMap(({ findings }) => findings.map(({ rule }) => rule))
        .filter((rule) => /^plan\/(?:cannot-run|too-slow)$/.test(rule))
        .sort(),
    );
  });

  test("every rule is there, with its page and without a link that leads nowhere", async () => {
    const { log } = await sarif(join(house, "examples/first-circuit"));
    const [run] = log.runs;
    expect(run!.tool.driver).toMatchObject({ name: "loomwright", version, semanticVersion: version });
    expect(run!.tool.driver.rules.map(({ id }) => id)).toEqual(rules.map(({ id }) => id));
    for (const { help, fullDescription } of run!.tool.driver.rules) {
      expect(fullDescription.text).not.toBe("");
      expect(help.markdown).toContain("## Why it matters");
      expect(help.markdown).not.toMatch(/\]\((?!https?:)/);
      // Section 3.11.4.2: no HTML.
      expect(help.markdown.replaceAll(/```.*?```|`[^`]*`/gs, "")).not.toMatch(/<[a-z!/]/i);
    }
  });
});

describe("a log", () => {
  test("names the value's own columns in UTF-16 units, counted from 1", async () => {
    write(
      "plan.ts",
      `${head}/* 🛥 */ circuit({ name: "ünch 🪫", load: 48, oneWayFt: 10, gauge: 12, protect: 45 });\n`,
    );
    const { log } = await sarif();
    expect(log.runs[0]!.columnKind).toBe("utf16CodeUnits");
    const ampacity = log.runs[0]!.results.find(({ ruleId }) => ruleId === "conductor/ampacity")!;
    expect(textAt(ampacity.locations[0]!.physicalLocation, folder)).toBe("12");
  });

  test("holds fixes that, applied, leave nothing to find", async () => {
    write(
      "plan.ts",
      `${head}circuit({ name: "lamp", load: 4, oneWayFt: 80, gauge: 14, insulationC: 75, protect: 5 });\n`,
    );
    const { log } = await sarif();
    const [result] = log.runs[0]!.results;
    expect(result!.fixes![0]!.properties.kind).toBe("repair");
    for (const { artifactLocation, replacements } of result!.fixes![0]!.artifactChanges)
      for (const { deletedRegion, insertedContent } of replacements)
        replaceIn(decodeURIComponent(artifactLocation.uri), deletedRegion, insertedContent.text);
    expect((await sarif()).log.runs[0]!.results).toEqual([]);
  });

  test("says of a finding that was accepted that it is suppressed in the source, and why", async () => {
    write(
      "plan.ts",
      `${head}circuit({ name: "lamp", load: 4, oneWayFt: 80, gauge: 14, insulationC: 75, protect: 5, accept: { "conductor/voltage-drop": "only a marker" } });
circuit({ name: "other", load: 4, oneWayFt: 80, gauge: 14, insulationC: 75, protect: 5 });\n`,
    );
    const { log } = await sarif();
    expect(complaints(log)).toEqual([]);
    expect(log.runs[0]!.results.map(({ suppressions }) => suppressions)).toEqual([
      [{ kind: "inSource", status: "accepted", justification: "only a marker" }],
      [],
    ]);
  });

  test("tells a finding by what it is about, not by its line", async () => {
    const plan = `${head}circuit({ name: "winch", load: 48, oneWayFt: 10, gauge: 12, protect: 45 });\n`;
    write("plan.ts", plan);
    const before = (await sarif()).log.runs[0]!.results;
    write("plan.ts", plan.replace(head, `${head}\n// A line more.\nconst more = 1;\n`));
    const after = (await sarif()).log.runs[0]!.results;
    const prints = (results: typeof before) => results.map(({ partialFingerprints }) => partialFingerprints);
    expect(prints(after)).toEqual(prints(before));
    expect(after[0]!.locations).not.toEqual(before[0]!.locations);
    write("plan.ts", plan.replace("winch", "windlass"));
    expect(prints((await sarif()).log.runs[0]!.results)).not.toEqual(prints(before));
  });
});

test("what was not judged is a notification with the reason, and the run is no success", async () => {
  const invocation = async () => {
    const { log } = await sarif();
    expect(complaints(log)).toEqual([]);
    const [run] = log.runs as unknown as readonly [NotifyingRun];
    const { executionSuccessful, toolExecutionNotifications } = run.invocations[0]!;
    const said = toolExecutionNotifications.map(({ level, descriptor, locations }) => {
      expect(run.tool.driver.notifications[descriptor.index]?.id).toBe(descriptor.id);
      return [level, descriptor.id, locations[0]!.physicalLocation.artifactLocation.uri];
    });
    return [executionSuccessful, ...said];
  };
  write("plan.ts", `${head}circuit({ name: "lamp", load: 2, oneWayFt: 10, gauge: 14, protect: 5 });\n`);
  write("build/plan.js", `${head}circuit({ name: "lamp", load: 2, oneWayFt: 10, gauge: 14, protect: 5 });\n`);
  const copy = ["note", "passed-by/compiled-copy", "build/plan.js"];
  expect(await invocation()).toEqual([true, copy]);
  write("large {0}.ts", head + " ".repeat(4 * 1024 * 1024));
  write("half.ts", `${head}circuit({`);
  write("thrown.ts", `${head}throw new Error("{0}");\n`);
  expect(await invocation()).toEqual([
    false,
    ["error", "not-judged/half-typed", "half.ts"],
    ["error", "not-judged/error-thrown", "thrown.ts"],
    copy,
    ["error", "passed-by/too-large", "large%20%7B0%7D.ts"],
  ]);
});

interface NotifyingRun {
  readonly tool: { readonly driver: { readonly notifications: readonly { readonly id: string }[] } };
  readonly invocations: readonly {
    readonly executionSuccessful: boolean;
    readonly toolExecutionNotifications: readonly {
      readonly level: string;
      readonly descriptor: { readonly id: string; readonly index: number };
      readonly locations: readonly { readonly physicalLocation: { readonly artifactLocation: Location } }[];
    }[];
  }[];
}

describe("hostile names", () => {
  test.each([
    ["a link", "[free batteries](https://elsewhere.example/)"],
    ["a link to a script", "[x](javascript:alert(1))"],
    ["places for arguments", "{0} {1} }{"],
    ["HTML", "<img src=x onerror=alert(1)><script>"],
    ["line breaks", "a\r\nb\u2028c"],
    ["escape sequences and turned writing", "\u001b[2J\u202egnihton"],
    ["half a surrogate pair", "\ud83d lamp"],
    ["quotes and backslashes", "\"'\\\\u0000`"],
    ["the names of a prototype", "__proto__"],
    ["5,000 characters", "x".repeat(5_000)],
  ])("%s", async (_, name) => {
    write(
      "plan.ts",
      `${head}circuit({ name: ${JSON.stringify(name)}, load: 48, oneWayFt: 10, gauge: 12, protect: 45 });\n`,
    );
    const { log, text } = await sarif();
    expect(complaints(log)).toEqual([]);
    expect(log.runs[0]!.results.length).toBeGreaterThan(0);
    for (const { message, locations } of log.runs[0]!.results) {
      for (const said of [
        message.text,
        ...locations.flatMap((one) => one.logicalLocations.map(({ name }) => name)),
      ]) {
        expect(said).not.toContain("](");
        expect(said.replaceAll("{{", "").replaceAll("}}", "")).not.toMatch(/[{}]/);
        // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
        expect(said).not.toMatch(/[\u0000-\u001f\u202e\u2028]/);
      }
    }
    expect(JSON.parse(text)).toEqual(log);
  });

  test.each(["a b.ts", "a#b?c.ts", "100%41.ts", "ü/日本.ts", "c:/d.ts", "[x](y).ts", "a'b&c.ts", "a+b@c.ts"])(
    "a file called %s",
    async (file) => {
      write(file, `${head}circuit({ name: "winch", load: 48, oneWayFt: 10, gauge: 12, protect: 45 });\n`);
      const { log } = await sarif();
      expect(complaints(log)).toEqual([]);
      const [{ uri, uriBaseId }] = log.runs[0]!.artifacts.map(({ location }) => location) as [Location];
      expect(uriBaseId).toBe("%SRCROOT%");
      expect(Object.keys(log.runs[0]!.originalUriBaseIds)).toEqual([uriBaseId]);
      // As a reader of the log finds the file: RFC 3986, section 5.2.
      expect(fileURLToPath(new URL(uri, `file://${encodeURI(folder)}/`))).toBe(join(folder, file));
    },
  );
});

async function sarif(cwd = folder) {
  const checked = await checkPlans({ names: [], cwd, sandbox: sharedSandbox, fresh: true, progress() {} });
  const { plans } = checked;
  const text = sarifReport(checked, (id) =>
    readFileSync(join(house, `library/rules/${id}.md`), "utf8").replaceAll(/<!--.*?-->\n?/gs, ""),
  );
  return { plans, text, log: JSON.parse(text) as Log };
}

/** Draft 4 uses `id` for the `$id` of later drafts; this schema uses none of its other differences. */
const { $schema: _draft, id: _id, ...schema } = JSON.parse(schemaText) as Record<string, unknown>;
const ajv = new Ajv({ strict: false, allErrors: true, unicodeRegExp: false });
addFormats.default(ajv);
const isValid = ajv.compile(schema);

function complaints(log: unknown): string[] {
  isValid(log);
  return (isValid.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`);
}

function expectToBeThere(run: Log["runs"][0], { artifactLocation, region }: Physical, root: string) {
  expect(run.artifacts[artifactLocation.index]!.location.uri).toBe(artifactLocation.uri);
  const rows = readFileSync(join(root, decodeURIComponent(artifactLocation.uri)), "utf8").split("\n");
  expect(rows[region.startLine - 1]!.length).toBeGreaterThanOrEqual(region.startColumn - 1);
  expect(rows[region.endLine - 1]!.length).toBeGreaterThanOrEqual(region.endColumn - 1);
}

function textAt({ artifactLocation, region }: Physical, root: string): string {
  const row = readFileSync(join(root, decodeURIComponent(artifactLocation.uri)), "utf8").split("\n")[
    region.startLine - 1
  ]!;
  return row.slice(region.startColumn - 1, region.endColumn - 1);
}

function replaceIn(file: string, { startLine, startColumn, endLine, endColumn }: Region, newText: string) {
  const rows = readFileSync(join(folder, file), "utf8").split("\n");
  const before = [...rows.slice(0, startLine - 1), rows[startLine - 1]!.slice(0, startColumn - 1)].join("\n");
  const after = [rows[endLine - 1]!.slice(endColumn - 1), ...rows.slice(endLine)].join("\n");
  write(file, before + newText + after);
}

function write(file: string, text: string): void {
  mkdirSync(dirname(join(folder, file)), { recursive: true });
  writeFileSync(join(folder, file), text);
}

/** The parts that these tests read; the schema covers the rest. */
interface Log {
  readonly runs: readonly {
    readonly tool: {
      readonly driver: {
        readonly rules: readonly {
          readonly id: string;
          readonly fullDescription: { readonly text: string };
          readonly help: { readonly markdown: string };
        }[];
      };
    };
    readonly columnKind: string;
    readonly originalUriBaseIds: object;
    readonly artifacts: readonly { readonly location: Location }[];
    readonly invocations: readonly [
      {
        readonly executionSuccessful: boolean;
        readonly toolExecutionNotifications: readonly { readonly associatedRule: { readonly id: string } }[];
      },
    ];
    readonly results: readonly {
      readonly ruleId: string;
      readonly ruleIndex: number;
      readonly message: { readonly text: string };
      readonly locations: readonly {
        readonly physicalLocation: Physical;
        readonly logicalLocations: readonly { readonly name: string }[];
      }[];
      readonly relatedLocations?: readonly { readonly physicalLocation: Physical }[];
      readonly partialFingerprints: Readonly<Record<string, string>>;
      readonly suppressions: readonly object[];
      readonly fixes?: readonly {
        readonly properties: { readonly kind: string };
        readonly artifactChanges: readonly {
          readonly artifactLocation: Location;
          readonly replacements: readonly {
            readonly deletedRegion: Region;
            readonly insertedContent: { readonly text: string };
          }[];
        }[];
      }[];
    }[];
  }[];
}

interface Physical {
  readonly artifactLocation: Location;
  readonly region: Region;
}

interface Location {
  readonly uri: string;
  readonly uriBaseId: string;
  readonly index: number;
}

interface Region {
  readonly startLine: number;
  readonly startColumn: number;
  readonly endLine: number;
  readonly endColumn: number;
}
