import ts from "typescript";
import type { Judgement } from "../../../library/judge.ts";
import { descriptorOfWord } from "../../../library/model/parts/index.ts";
import type { PropertyPath } from "../../../library/model/plain-values.ts";
import type { PlanRecord } from "../../../library/model/record.ts";
import { terminal } from "../../../library/model/terminal-property.ts";
import { isPartWord } from "../../../library/model/terminals.ts";
import type { Finding, ProposedFix } from "../../../library/rules/finding.ts";
import { messageOf } from "../../../library/rules/message-of.ts";
import { invalidValue } from "../../../library/rules/plan/invalid-value.ts";
import { separatorOf } from "../../../library/rules/wording/part-in-words.ts";
import type {
  CheckedPlan,
  Movable,
  PlacedFinding,
  PlacedFix,
  SourceRange,
  ValueAtPosition,
} from "../checked-plan.ts";
import { editsOf } from "../fixes/edits.ts";
import { importEdit } from "../fixes/import-edit.ts";
import type { Snapshot, Uri } from "../workspace.ts";
import type { TracedRun } from "./contexts.ts";
import { movableAt } from "./movable.ts";
import { namesInReach } from "./names-in-reach.ts";
import { referenceIn } from "./references.ts";
import { type FoundRange, PlanSourceMap, placeIn } from "./source-map.ts";

/**
 * A judged plan together with its text. Source ranges are computed on demand, from the trees of exactly the judged versions,
 * and cached for as long as those trees exist.
 */
export class LocatedPlan implements CheckedPlan {
  readonly state = "checked";
  readonly root: Uri;
  readonly snapshot: Snapshot;
  readonly records: readonly PlanRecord[];
  readonly judgement: Judgement;
  readonly traced: TracedRun;
  readonly #problemPlaces: readonly SourceRange[];
  #places: PlanSourceMap;
  #findings: readonly PlacedFinding[] | undefined;
  #misnamedKeys: ReadonlySet<string> | undefined;
  /** The findings merged into each placed one. */
  readonly #merged = new Map<PlacedFinding, readonly Finding[]>();

  constructor(parts: {
    readonly traced: TracedRun;
    readonly snapshot: Snapshot;
    readonly records: readonly PlanRecord[];
    readonly judgement: Judgement;
    /** By the problem's index. */
    readonly problemPlaces: readonly SourceRange[];
    /** An earlier version of the plan, to reuse the parts that the two have in common. */
    readonly before?: LocatedPlan | undefined;
  }) {
    this.root = parts.traced.root.uri;
    this.snapshot = parts.snapshot;
    this.records = parts.records;
    this.judgement = parts.judgement;
    this.traced = parts.traced;
    this.#problemPlaces = parts.problemPlaces;
    this.#places = new PlanSourceMap(parts.traced, parts.before ? parts.before.#places : undefined);
  }

  get findings(): readonly PlacedFinding[] {
    this.#findings ??= this.#placeFindings();
    return this.#findings;
  }

  /** All findings merged into a placed one. */
  findingsIn(placed: PlacedFinding): readonly Finding[] {
    return this.#merged.get(placed) ?? [placed.finding];
  }

  /** The checked text of a file. */
  textOf(uri: Uri): string | undefined {
    return this.traced.files.find((file) => file.uri === uri)?.text;
  }

  placeOf(record: number, path: PropertyPath): SourceRange | undefined {
    const { places } = this;
    if (path.length === 0) {
      const { call, given } = places.argumentOf(record);
      return given && placeIn({ file: call.file, node: given });
    }
    const end = places.originOf(record, path)?.trail.at(-1);
    return end && placeIn(end);
  }

  callOf(record: number): SourceRange {
    return placeIn(this.places.argumentOf(record).call);
  }

  at(uri: Uri, offset: number): ValueAtPosition | undefined {
    return this.places.valueAt(uri, offset);
  }

  namesAt(uri: Uri, offset: number): ReadonlyMap<number, string> {
    const { places } = this;
    const file = this.traced.files.find((candidate) => candidate.uri === uri);
    const byCall = file ? namesInReach(file, offset, this.traced) : new Map<ts.Node, string>();
    const names = this.records.flatMap((_, record): [number, string][] => {
      const { node } = places.argumentOf(record).call;
      const name = byCall.get(node);
      // A call in a loop or function made several.
      return name === undefined || places.recordsOfCall(record).size > 1 ? [] : [[record, name]];
    });
    return new Map(names);
  }

  nameToImport(uri: Uri, record: number): string | undefined {
    const into = this.traced.files.find((file) => file.uri === uri);
    return into && importEdit(record, into, this.places)?.inText;
  }

  movableAt(record: number, path: PropertyPath): Movable {
    return movableAt(record, path, this.places);
  }

  editsOf(fix: ProposedFix): PlacedFix | undefined {
    return editsOf(fix, this.places);
  }

  /** Created again when a newer text has taken over a tree: cached nodes would refer to other text. */
  get places(): PlanSourceMap {
    if (!this.#places.current) this.#places = new PlanSourceMap(this.traced);
    return this.#places;
  }

  #placeFindings(): readonly PlacedFinding[] {
    const placed: PlacedFinding[] = [];
    const shared = new SharedFindings();
    for (const finding of this.judgement.findings) {
      const worded = messageOf(finding);
      const { at } = finding;
      if ("problem" in at) {
        const place = this.#problemPlaces[at.problem] ?? this.callOf(0);
        placed.push({ finding, subjects: [finding.subject], message: worded, place, related: [] });
        continue;
      }
      const wrongTerminal =
        finding.rule === invalidValue.id ? this.#wrongTerminal(at.record, at.path, worded) : undefined;
      const { message, besideCompiler } = wrongTerminal ?? { message: worded, besideCompiler: undefined };
      const name =
        finding.rule === invalidValue.id
          ? this.#misplaced(at.record, at.path, finding.values as { readonly wrong: string })
          : undefined;
      const {
        place,
        related,
        shared: by,
      }: FoundRange = name ? { place: name, related: [] } : this.places.placeFinding(at.record, at.path);
      if (by && shared.join(finding, by, placed.length)) continue;
      const others = finding.related.flatMap(({ at: other, text }) => {
        const found =
          "record" in other
            ? this.places.placeRelated(other.record, other.path)
            : this.#problemPlaces[other.problem];
        return found ? [{ place: found, text }] : [];
      });
      placed.push({
        finding,
        subjects: [finding.subject],
        message,
        ...(besideCompiler === undefined ? {} : { besideCompiler }),
        place,
        related: [...others, ...related],
      });
    }
    for (const { at, findings } of shared.all()) {
      const one = placed[at];
      if (!one || findings.length === 1) continue;
      const subjects = [...new Set(findings.map(({ subject }) => subject))];
      const all = { ...one, subjects, message: `${one.message}${alsoAbout(subjects.slice(1))}` };
      placed[at] = all;
      this.#merged.set(all, findings);
    }
    return placed;
  }

  /**
   * `panel.fed`, where `panel` is a fuse panel: the terminals that it has. Only the text shows the name; the record has no value
   * there.
   */
  #wrongTerminal(
    record: number,
    path: PropertyPath,
    message: string,
  ): { readonly message: string; readonly besideCompiler: string } | undefined {
    const [property] = path;
    if (path.length !== 1 || !terminalProperties.has(String(property))) return undefined;
    const written = this.places.originOf(record, path)?.trail.at(-1);
    if (!written || !ts.isPropertyAccessExpression(written.node)) return undefined;
    const { expression, name } = written.node;
    if (!ts.isIdentifier(expression)) return undefined;
    const names = this.namesAt(written.file.uri, written.node.end);
    const [part] = [...names].find(([, variable]) => variable === expression.text) ?? [];
    const terminals = part === undefined ? [] : terminalsOf(this.records[part]!);
    if (terminals.length === 0 || terminals.includes(name.text)) return undefined;
    const allowed = ` Allowed: ${terminal.allowed}.`;
    const list = terminals.map((one) => `${expression.text}.${one}`).join(", ");
    return {
      message: message.replace(allowed, ` Allowed: ${list}.`),
      besideCompiler: message.replace(allowed, ""),
    };
  }

  /**
   * A property that does not exist is itself the error, at any value: the finding is placed on its name. A missing property may
   * be in the text after all.
   */
  #misplaced(
    record: number,
    path: PropertyPath,
    { wrong }: { readonly wrong: string },
  ): SourceRange | undefined {
    if (path.length === 0) return this.places.placeOfNothing(record, wrong.split(" ")[0] ?? "");
    const keyOf = (record: number, path: PropertyPath) => [record, ...path].join("\n");
    this.#misnamedKeys ??= new Set(
      this.judgement.model.invalid
        .filter(({ given }) => given === undefined)
        .map((invalid) => keyOf(invalid.record, invalid.path)),
    );
    const origin = this.#misnamedKeys.has(keyOf(record, path))
      ? this.places.originOf(record, path)
      : undefined;
    // An invalid terminal, or an element of a list, is wrong by its kind: there is no value to quote.
    if (!origin || origin.element || referenceIn(this.places.valueOf(record, path))) return undefined;
    return origin.property.name && placeIn({ file: origin.holder.file, node: origin.property.name });
  }
}

const terminalProperties: ReadonlySet<string> = new Set(["from", "to", "returnTo", "on"]);

/** The names of a part's terminals; none for the record of another function. */
function terminalsOf({ word, input }: PlanRecord): readonly string[] {
  if (!isPartWord(word)) return [];
  const own = (input as { readonly terminals?: unknown } | null)?.terminals;
  if (word === "part") return Array.isArray(own) ? own.filter((name) => typeof name === "string") : [];
  return Object.keys(descriptorOfWord(word).terminals);
}

/** Findings that the text does not distinguish: of one rule, about one source value. */
class SharedFindings {
  readonly #byNode = new Map<ts.Node, Map<string, MergedFinding>>();

  /** False for the first one, which is to be placed at that index. */
  join(finding: Finding, node: ts.Node, index: number): boolean {
    const byRule = this.#byNode.get(node) ?? new Map<string, MergedFinding>();
    this.#byNode.set(node, byRule);
    const key = `${finding.rule}\n${finding.severity}\n${finding.accepted ?? ""}`;
    const first = byRule.get(key);
    if (first) first.findings.push(finding);
    else byRule.set(key, { at: index, findings: [finding] });
    return first !== undefined;
  }

  all(): readonly MergedFinding[] {
    return [...this.#byNode.values()].flatMap((byRule) => [...byRule.values()]);
  }
}

interface MergedFinding {
  readonly at: number;
  readonly findings: Finding[];
}

function alsoAbout(others: readonly string[]): string {
  const shown = others.slice(0, 5);
  const rest = others.length - shown.length;
  return ` Likewise: ${shown.join(separatorOf(shown))}${rest > 0 ? ` and ${rest} more` : ""}.`;
}
