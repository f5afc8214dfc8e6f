import { createHash } from "node:crypto";
import type {
  Artifact,
  ArtifactLocation,
  Fix,
  Log,
  Notification,
  PhysicalLocation,
  Region,
  ReportingDescriptor,
  ReportingDescriptorReference,
  Result,
  Run,
} from "sarif";
import { name, version } from "../../library/package.json";
import type { Severity } from "../../library/rules/finding.ts";
import { rules } from "../../library/rules/registry.ts";
import type { Rule } from "../../library/rules/rule.ts";
import { sourceInFull } from "../../library/rules/wording/source-in-words.ts";
import { mayHideHazard, passedByReasons } from "../evaluate/files/passed-by.ts";
import type { CheckedPlans } from "./check-result.ts";
import type { PassedFile } from "./passed-files.ts";
import { type Lines, notJudgedReasons, type ReportedFinding } from "./report-schema.ts";
import type { Reported } from "./reported-plan.ts";
import { rulePage } from "./rule-page.ts";
import { fileReference, sarifText, sourceRoot } from "./sarif-text.ts";

/**
 * Findings as a log in the Static Analysis Results Interchange Format (OASIS Standard, version 2.1.0): one run, every rule with
 * its page, findings with their fixes, accepted findings as suppressed in the source with their reason. A plan that was not
 * judged to its end, and each file that was passed by, is a notification with the reason. The same plans give the same bytes: no
 * date, no address of this machine.
 */
export function sarifReport(
  { plans, passedBy }: Pick<CheckedPlans, "plans" | "passedBy">,
  pageOf: (id: string) => string = rulePage,
): string {
  const artifacts = new Artifacts();
  for (const { file } of plans) artifacts.indexOf(file);
  const fingerprint = fingerprints();
  const results = plans.flatMap(({ findings }) =>
    findings.map((finding) => resultOf(finding, artifacts, fingerprint(finding))),
  );
  const failed = plans.filter(({ evaluated }) => !evaluated);
  const run: Run = {
    tool: {
      driver: {
        ...{ name, version, semanticVersion: version },
        shortDescription: { text: "Checks low-voltage electrical plans written in TypeScript." },
        rules: rules.map((rule) => ruleOf(rule, pageOf)),
        notifications: notificationKinds.map(({ id, text }) => ({ id, shortDescription: { text } })),
      },
    },
    invocations: [
      {
        executionSuccessful: failed.length === 0 && !passedBy.some(mayHideHazard),
        toolExecutionNotifications: [
          ...failed.flatMap((plan) => notificationsOf(plan, artifacts)),
          ...passedBy.map(passedNotification),
        ],
      },
    ],
    originalUriBaseIds: { [sourceRoot]: { description: { text: "The folder that the check ran in." } } },
    columnKind: "utf16CodeUnits",
    results,
    artifacts: artifacts.list,
  };
  const log: Log = { $schema: schema, version: "2.1.0", runs: [run] };
  return `${JSON.stringify(log, null, 2)}\n`;
}

const schema = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";

const levels: Readonly<Record<Severity, Result.level>> = {
  error: "error",
  warning: "warning",
  info: "note",
  hint: "note",
};

function ruleOf(rule: Rule<unknown>, pageOf: (id: string) => string): ReportingDescriptor {
  const { id, title, why, severity, acceptable, fixable, sources } = rule;
  return {
    id,
    shortDescription: { text: title },
    fullDescription: { text: why },
    help: {
      text: `${why} \`loomwright explain ${id}\` shows the calculation, and the sources of its numbers.`,
      markdown: withoutLinks(pageOf(id)),
    },
    defaultConfiguration: { level: levels[severity] },
    properties: {
      ...{ severity, acceptable, fixable },
      sources: sources.map(sourceInFull),
    },
  };
}

/** Other rules' pages are not available to a reader of the log. */
function withoutLinks(page: string): string {
  return page.replaceAll(/\[([^\]\n]*)\]\((?![a-z]+:)[^)\n]*\)/g, "$1");
}

function resultOf(finding: ReportedFinding, artifacts: Artifacts, fingerprint: string): Result {
  const {
    rule,
    severity,
    subject,
    property,
    message,
    accepted,
    followsFrom,
    related,
    fixesTried,
    advice,
    fixes,
  } = finding;
  return {
    ...{ ruleId: rule, ruleIndex: rules.findIndex(({ id }) => id === rule), level: levels[severity] },
    message: { text: sarifText(message) },
    locations: [
      {
        physicalLocation: physical(finding, artifacts),
        logicalLocations: [
          {
            name: sarifText(subject),
            ...(property === undefined ? {} : { fullyQualifiedName: sarifText(`${subject}.${property}`) }),
          },
        ],
      },
    ],
    ...(related.length > 0 && {
      relatedLocations: related.map(({ text, ...at }, id) => ({
        id,
        physicalLocation: physical(at, artifacts),
        message: { text: sarifText(text) },
      })),
    }),
    partialFingerprints: { [fingerprintName]: fingerprint },
    // Empty if there is none: a missing list would mean "unknown".
    suppressions:
      accepted === undefined
        ? []
        : [{ kind: "inSource", status: "accepted", justification: sarifText(accepted) }],
    ...(fixes.length > 0 && { fixes: fixes.map((fix) => fixOf(fix, artifacts)) }),
    properties: {
      severity,
      ...(fixesTried === undefined ? {} : { fixesTried }),
      ...(advice === undefined ? {} : { advice: sarifText(advice) }),
      ...(followsFrom && {
        followsFrom: { ...followsFrom, subject: sarifText(followsFrom.subject) },
      }),
    },
  };
}

function fixOf({ title, kind, edits }: ReportedFinding["fixes"][number], artifacts: Artifacts): Fix {
  const files = [...new Set(edits.map(({ file }) => file))];
  return {
    description: { text: sarifText(title) },
    artifactChanges: files.map((file) => ({
      artifactLocation: artifacts.locationOf(file),
      replacements: edits
        .filter((edit) => edit.file === file)
        .map((edit) => ({ deletedRegion: region(edit), insertedContent: { text: edit.newText } })),
    })),
    properties: { kind },
  };
}

/** Why a plan could not be evaluated: a tool that reads only results would take silence for success. */
function notificationsOf({ file, findings, notJudged }: Reported, artifacts: Artifacts): Notification[] {
  const kind = `not-judged/${notJudged?.reason ?? "cannot-run"}`;
  return findings
    .filter(({ rule }) => rules.some(({ id, acceptable }) => id === rule && !acceptable))
    .map((finding) => ({
      descriptor: descriptorOf(kind),
      associatedRule: { id: finding.rule, index: rules.findIndex(({ id }) => id === finding.rule) },
      level: "error",
      message: { text: sarifText(`${file} could not be checked to the end: ${finding.message}`) },
      locations: [{ physicalLocation: physical(finding, artifacts) }],
    }));
}

/** The file was not analysed, so it is not among the log's artifacts. */
function passedNotification({ file, reason, why }: PassedFile): Notification {
  return {
    descriptor: descriptorOf(`passed-by/${reason}`),
    level: mayHideHazard({ reason }) ? "error" : "note",
    message: { text: sarifText(`${file} ${why}`) },
    locations: [{ physicalLocation: { artifactLocation: fileReference(file) } }],
  };
}

const notificationKinds = [
  ...notJudgedReasons.map((reason) => ({
    id: `not-judged/${reason}`,
    text: `A plan was not judged to its end: ${reason.replaceAll("-", " ")}.`,
  })),
  ...passedByReasons.map((reason) => ({
    id: `passed-by/${reason}`,
    text: `A file that looks like a plan, or belongs to one, was not judged: ${reason.replaceAll("-", " ")}.`,
  })),
];

function descriptorOf(id: string): ReportingDescriptorReference {
  return { id, index: notificationKinds.findIndex((kind) => kind.id === id) };
}

function physical(at: Lines, artifacts: Artifacts): PhysicalLocation {
  return { artifactLocation: artifacts.locationOf(at.file), region: region(at) };
}

/** Both count from 1, and both end with the first position after the range. */
function region({ line, column, endLine, endColumn }: Lines): Region {
  return { startLine: line, startColumn: column, endLine, endColumn };
}

/** The files that a log refers to, each once. */
class Artifacts {
  readonly #indices = new Map<string, number>();

  indexOf(file: string): number {
    const index = this.#indices.get(file) ?? this.#indices.size;
    this.#indices.set(file, index);
    return index;
  }

  locationOf(file: string): ArtifactLocation {
    return { ...fileReference(file), index: this.indexOf(file) };
  }

  get list(): Artifact[] {
    return [...this.#indices].map(([file, index]) => ({
      location: { ...fileReference(file), index },
      roles: ["analysisTarget"],
      sourceLanguage: /\.[cm]?jsx?$/i.test(file) ? "javascript" : "typescript",
    }));
  }
}

const fingerprintName = "ruleSubjectProperty/v1";

/**
 * The identity of a finding, stable when lines are added above it: rule, file, subject and property. If two agree in all of that,
 * the second gets a number.
 */
function fingerprints(): (finding: ReportedFinding) => string {
  const seen = new Map<string, number>();
  return ({ rule, file, subject, property = "" }) => {
    const same = JSON.stringify([rule, file, subject, property]);
    const before = seen.get(same) ?? 0;
    seen.set(same, before + 1);
    return createHash("sha256").update(`${same}\n${before}`).digest("hex");
  };
}
