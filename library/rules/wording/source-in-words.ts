import type { Ampacity } from "../../analysis/circuit-result.ts";
import type { Citation } from "../../standards/citation.ts";

/**
 * A citation short enough for a message, a hover or a line of the command line, with its standing: "33 CFR 183.425(b), Table 5",
 * "ISO 10133:2012 Annex A, unconfirmed figure", "common practice, no source".
 */
export function sourceInWords(source: Citation): string {
  if (source.authority === "common practice") return "common practice, no source";
  if (source.authority === "stated in the plan") return "stated in the plan";
  const place = join(shortDocument(source), source.section);
  return source.confirmed === "memory" ? `${place}, ${unconfirmed}` : place;
}

/** The words beside every limit with a figure that was not read in its document. */
export const unconfirmed = "unconfirmed figure";

/** " (unconfirmed figure)" behind a figure, if one of its sources was not read. */
export function unconfirmedAmong(sources: readonly Citation[]): string {
  return sources.some(({ confirmed }) => confirmed === "memory") ? ` (${unconfirmed})` : "";
}

/** The source of an ampacity: that of its table, and the terminal that lowers it. */
export function ampacitySourceInWords(ampacity: Ampacity): string {
  return `${terminalInWords(ampacity)}${tableSourceInWords(ampacity)}`;
}

/** The table of an ampacity by insulation: unconfirmed if one of its figures is, from the table or a factor. */
export function tableSourceInWords(ampacity: Ampacity): string {
  const words = sourceInWords(ampacity.source);
  if (!ampacity.judged || ampacity.source.confirmed === "memory") return words;
  const recalled = ampacity.factors.some(
    ({ factor, source }) => factor !== 1 && source.confirmed === "memory",
  );
  return recalled ? `${words}, ${unconfirmed}` : words;
}

/** "75 °C terminals of disconnect main, NFPA 70 110.14(C); ", if a terminal lowers the ampacity. */
function terminalInWords(ampacity: Ampacity): string {
  if (!ampacity.judged || !ampacity.terminal) return "";
  const { coolest, source } = ampacity.terminal;
  return `${coolest.ratedC} °C terminals of ${coolest.of ?? "its fuse or breaker"}, ${sourceInWords(source)}; `;
}

/**
 * {@link sourceInWords} in full, for pages and reports: title of the document, edition, how far it is confirmed, and the note.
 */
export function sourceInFull(source: Citation): string {
  const { document, section, edition, authority, confirmed, note } = source;
  const unsourced = authority === "common practice" || authority === "stated in the plan";
  const where = [document, section, edition && `edition ${edition}`].filter(Boolean).join(", ");
  const standing = unsourced ? "" : `: ${authority}, ${confirmedInWords[confirmed]}`;
  return `${where}${standing}.${note ? ` ${note}` : ""}`;
}

const confirmedInWords: Record<Citation["confirmed"], string> = {
  read: "read in the document",
  computed: "computed from its formula",
  memory: `from memory, ${unconfirmed}`,
};

/** The designation without the title in brackets, with the year after a colon as ISO and IEC write it. */
function shortDocument({ document, edition }: Citation): string {
  const designation = document.split(/ \(|, /)[0] ?? document;
  const year = edition?.match(/^\d{4}\b/)?.[0];
  return year && /^(ISO|IEC) /.test(designation) ? `${designation}:${year}` : designation;
}

/** "33 CFR 183" and "183.425" have the part's number in common: it is written once. Numbered places need no comma. */
function join(designation: string, section: string): string {
  if (section === "") return designation;
  const part = designation.split(" ").at(-1) ?? "";
  if (section.startsWith(`${part}.`)) return `${designation.slice(0, -part.length)}${section}`;
  // Clauses of ISO and IEC are numbered like the documents themselves.
  const clause = /^\d/.test(section) && /^(ISO|IEC) /.test(designation);
  const numbered = /^(Table|Annex|Chapter) /.test(section) || (/^\d/.test(section) && !clause);
  return `${designation}${numbered ? " " : ", "}${section}`;
}
