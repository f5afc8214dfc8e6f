import type { BankEnergy, PeriodEnergy } from "../../library/analysis/energy/energy-result.ts";
import { leastChangesInSteps } from "../../library/analysis/energy/least-changes.ts";
import { worstMonth, worstWeek } from "../../library/analysis/energy/worst-week.ts";
import { energyChart } from "../../library/documents/energy/energy-chart.ts";
import { leastChangesInWords } from "../../library/documents/energy/least-changes-table.ts";
import {
  about,
  refusedInWords,
  summaryOf,
  verdictAt,
  verdictGlyphs,
} from "../../library/documents/energy/verdict-in-words.ts";
import type { Judgement } from "../../library/judge.ts";
import { monthNames } from "../../library/model/use-properties.ts";
import { banksInWords } from "../../library/rules/wording/banks-in-words.ts";
import { fileName } from "../evaluate/files/file-name.ts";
import { leversOf } from "./energy-levers.ts";
import type { EnergyMonth, EnergyParams, EnergyView } from "./messages.ts";
import { plainWords } from "./plain-words.ts";
import type { PlanInView } from "./plan-in-view.ts";
import { versionsOf } from "./versions-in-view.ts";

/**
 * Whether the banks of a plan keep up, for the view beside it. `judged` is the plan as it is, or with a lever moved; the levers are
 * always those of the text.
 */
export function energyView(
  view: PlanInView,
  asked: Omit<EnergyParams, "textDocument">,
  judged: Judgement = view.plan.judgement,
): EnergyView {
  const { plan } = view;
  const head = {
    ...{ uri: view.client(plan.root).uri, versions: versionsOf(view), current: view.current },
    title: plainWords(plan.judgement.model.build.name ?? fileName(plan.root)),
    periods: judged.energy.map(({ period }) => plainWords(period.name)),
  };
  const at = Math.max(0, head.periods.indexOf(asked.period ?? ""));
  const energy = judged.energy[at];
  const bankAt = energy?.banks[asked.bank ?? 0] ? (asked.bank ?? 0) : 0;
  const bank = energy?.banks[bankAt];
  if (!energy || !bank) return { ...head, notes: [whyNone(judged, plan.records, energy)] };
  const inText = plan.judgement.energy[at];
  const ownBank = inText?.banks[bankAt];
  const month = bank.months.some((one) => one.month === asked.month) ? asked.month! : worstMonth(bank)!;
  const week = worstWeek(energy.period, bank, month)!;
  const { svg, title, description } = energyChart([{ kind: "week", energy, bank, week }], "screen");
  return {
    ...head,
    notes:
      judged.problems.length > 0
        ? ["The plan was not run to its end: later parts are not in these figures."]
        : [],
    shown: {
      ...{ period: plainWords(energy.period.name), bank: bankAt, month },
      banks: energy.banks.map((one) => plainWords(banksInWords(one))),
      summary: summaryOf(energy, bank).map(plainWords),
      months: bank.months.map((one) => monthOf(bank, one)),
      week: { svg, title: plainWords(title), description: plainWords(description) },
      levers:
        inText && ownBank
          ? leversOf(plan, inText, ownBank).map(({ record: _, path: __, ...lever }) => lever)
          : [],
    },
  };
}

/** An answer with the least single changes of its bank. Between two steps, each a balance, the search may be given up. */
export function* withLeastInSteps(answer: EnergyView, judged: Judgement): Generator<undefined, EnergyView> {
  const { periods, shown } = answer;
  const bank = shown && judged.energy[Math.max(0, periods.indexOf(shown.period))]?.banks[shown.bank];
  if (!bank) return answer;
  if (bank.months.every(({ verdict }) => verdict === "not judged"))
    return { ...answer, shown: { ...shown, least: { notes: [], rows: [] } } };
  const { notes, rows } = leastChangesInWords(yield* leastChangesInSteps(bank), bank);
  return { ...answer, shown: { ...shown, least: { notes: notes.map(plainWords), rows } } };
}

function whyNone(
  { model, energy }: Judgement,
  records: PlanInView["plan"]["records"],
  asked: PeriodEnergy | undefined,
): string {
  if (model.periods.length === 0 && model.invalid.some(({ record }) => records[record]?.word === "period"))
    return "Not judged: a value of the period is invalid. A finding in the text names it.";
  if (model.periods.length === 0)
    return "The plan has no period: period() states where and when you live with it, and use how long each load runs.";
  if (energy.length === 0)
    return "Not judged: the network could not be read. The problems in the text give the reason.";
  if (!asked?.climate)
    return "Not judged: the place of this period is not clear. A finding in the text offers the candidates.";
  if (asked.refusedParts.length > 0) return `Not judged: ${plainWords(refusedInWords(asked.refusedParts))}.`;
  return "Not judged: no bank feeds a load or is charged by the sun.";
}

function monthOf(bank: BankEnergy, month: BankEnergy["months"][number]): EnergyMonth {
  return {
    ...{ month: month.month, name: monthNames[month.month]!, sign: verdictGlyphs[month.verdict] },
    verdict: verdictAt(bank, month.verdict),
    use: about(month.useWh).text,
    yield: about(month.sourcesWh).text,
    missing: about(month.unmetWh).text,
    lowest: about(month.lowest * 100).text,
  };
}
