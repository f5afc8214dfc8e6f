import type { Judgement } from "../../judge.ts";
import type { NetworkConductor } from "../../model/network.ts";
import type { At, Finding } from "../../rules/finding.ts";
import { messageOf } from "../../rules/message-of.ts";
import type { FoundHere } from "./schematic.ts";

/** Findings by drawn element. A finding is handed out once; {@link FindingsByPlace.left} are those without a place. */
export interface FindingsByPlace {
  /** About the device at one end of a run. */
  ofDevice(record: number, end: "near" | "far"): readonly FoundHere[];
  /** About one conductor: the positive one of a circuit gets all findings that are not about its return. */
  ofConductor(record: number, role: NetworkConductor["role"]): readonly FoundHere[];
  /** About a part, or all remaining findings of a record. */
  ofRecord(record: number): readonly FoundHere[];
  left(): readonly FoundHere[];
}

/** Query it in the order devices, conductors, parts: each takes its own findings. */
export function findingsByPlace({ findings }: Judgement): FindingsByPlace {
  const waiting = new Map(
    findings.map((finding): [number, Waiting] => {
      const { accepted, severity } = finding;
      const at = drawnAt(finding);
      const reason = accepted === undefined ? "" : ` (accepted: ${accepted})`;
      const message = `${messageOf(finding)}${reason}`;
      return [
        findings.indexOf(finding),
        {
          record: "record" in at ? at.record : undefined,
          property: "record" in at ? String(at.path[0] ?? "") : "",
          here: { severity, message, accepted: accepted !== undefined },
        },
      ];
    }),
  );
  const byRecord = new Map<number | undefined, number[]>();
  for (const [key, { record }] of waiting) byRecord.set(record, [...(byRecord.get(record) ?? []), key]);
  const take = (record: number, wanted: (property: string) => boolean): FoundHere[] =>
    (byRecord.get(record) ?? []).flatMap((key) => {
      const one = waiting.get(key);
      if (!one || !wanted(one.property)) return [];
      waiting.delete(key);
      return [one.here];
    });
  return {
    ofDevice: (record, end) =>
      take(record, (property) => property === (end === "near" ? "protect" : "protectFarEnd")),
    ofConductor: (record, role) => take(record, (property) => (role === "return") === ofReturn.has(property)),
    ofRecord: (record) => take(record, () => true),
    left: () => [...waiting.values()].map(({ here }) => here),
  };
}

/** A finding about the plan as a whole may sit at a run that it does not concern; the places that it names are concerned. */
function drawnAt({ subject, at, related }: Finding): At {
  const [named] = related;
  return subject === "the plan" && named ? named.at : at;
}

interface Waiting {
  readonly record: number | undefined;
  /** The first step of the path: the property that is wrong. */
  readonly property: string;
  readonly here: FoundHere;
}

const ofReturn: ReadonlySet<string> = new Set(["negativeM", "negativeFt", "returnTo", "returnColour"]);
