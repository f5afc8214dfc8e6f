/**
 * The records of a text of comma-separated values (RFC 4180), each with its cells and its end position in the text. Our own: one
 * regular expression, where a package would be shipped for one question.
 */
export function csvRecords(text: string): readonly CsvRecord[] {
  const records: CsvRecord[] = [];
  let cells: string[] = [];
  const field = /(?:"([^"]*(?:""[^"]*)*)"|([^,\r\n]*))(,|\r\n|\n|\r|$)/y;
  field.lastIndex = text.startsWith("\uFEFF") ? 1 : 0;
  while (field.lastIndex < text.length || cells.length > 0) {
    const at = field.lastIndex;
    // Text after a closing quote is not valid CSV; the rest of it is then one cell.
    const [whole, quoted, plain, end = ""] = field.exec(text) ?? [text.slice(at), undefined, text.slice(at)];
    cells.push(quoted?.replaceAll('""', '"') ?? plain ?? "");
    if (end === ",") continue;
    records.push({ cells, end: at + whole.length - end.length });
    cells = [];
    if (end === "") break;
  }
  return records;
}

export interface CsvRecord {
  readonly cells: readonly string[];
  /** Before its line break. */
  readonly end: number;
}
