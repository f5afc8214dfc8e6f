import type { SupplyPath } from "../../library/analysis/network-result.ts";
import { dropVerdict } from "../../library/analysis/voltage-drop.ts";
import type { JudgedPlan } from "../../library/rules/rule.ts";
import { formatDistinct, withUnit } from "../../library/rules/wording/format-number.ts";
import { conductorInWords, listInWords, scenarioInWords } from "../../library/rules/wording/part-in-words.ts";
import { sourceInWords } from "../../library/rules/wording/source-in-words.ts";
import { whyNotJudged } from "../../library/rules/wording/unknown-length.ts";
import { limitRow, marginInWords } from "./limit-row.ts";
import { markdownWords } from "./plain-words.ts";

/** The loss on the whole supply path to a device, both polarities, and its largest contributions. */
export function wayRow(plan: JudgedPlan, part: number): string[] {
  const { network: judged } = plan;
  const way = judged?.result.supplyPaths.find((one) => one.part === part);
  if (!judged || !way) return [];
  const { network } = judged;
  const { dropV, dropPercent, dropLimitPercent } = way;
  const what = "Drop, whole path from the bank and back";
  const why = whyNotJudged(network, way);
  if (why !== undefined && dropVerdict(way) === "not judged") {
    const limit = `limit ${withUnit(dropLimitPercent, "%")}`;
    return [limitRow(what, markdownWords(why), limit, "", `limit: ${sourceInWords(way.dropLimitSource)}`)];
  }
  const limitV = (dropLimitPercent * dropV) / dropPercent;
  const [volts, limitVolts] = formatDistinct(dropV, limitV);
  const [percent, limit] = formatDistinct(dropPercent, dropLimitPercent);
  return [
    limitRow(
      what,
      `${why !== undefined || isOverloaded(plan, way) ? "at least " : ""}${volts} V, ${percent} %`,
      `${markdownWords(scenarioInWords(network, way.scenario))}${legsInWords(plan, way)}; limit ${Number.isFinite(limitV) ? `${limitVolts} V, ` : ""}${limit} %`,
      Number.isFinite(limitV) ? marginInWords(limitV - dropV, "V") : "",
      `limit: ${sourceInWords(way.dropLimitSource)}`,
    ),
  ];
}

/** Some conductor on it is above its ampacity, hotter than can be computed, and loses more than is shown. */
function isOverloaded({ circuits, network }: JudgedPlan, { legs }: SupplyPath): boolean {
  const records = new Set(legs.map(({ conductor }) => network?.network.conductors[conductor]?.record));
  return circuits.some(({ circuit, result }) => records.has(circuit.record) && result.drop.overloaded);
}

/** Those that add the most, greatest first: a thicker conductor helps there. Both conductors of a circuit are one. */
function legsInWords({ network }: JudgedPlan, { legs, dropV }: SupplyPath): string {
  const byRecord = new Map<number, { words: string; dropV: number }>();
  for (const leg of legs) {
    const conductor = network?.network.conductors[leg.conductor];
    if (!conductor) continue;
    const { record, role, name } = conductor;
    const known = byRecord.get(record);
    if (known) known.dropV += leg.dropV;
    else
      byRecord.set(record, {
        words: role === "cable" ? conductorInWords(conductor) : name,
        dropV: leg.dropV,
      });
  }
  const telling = [...byRecord.values()]
    .filter((one) => one.dropV > dropV / 20)
    .sort((one, other) => other.dropV - one.dropV)
    .map((one) => `${withUnit(one.dropV, "V")} on ${markdownWords(one.words)}`);
  return telling.length < 2 ? "" : `; ${listInWords(telling.slice(0, 4))}`;
}
