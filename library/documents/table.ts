/**
 * A schedule or a list as plain data: one table is shown as CSV, Markdown, JSON, in the report and in the editor. Its maker
 * decides the text of its figures; a view only escapes and draws.
 */
export interface Table {
  /** Names its file and its anchor: "wire-schedule". */
  readonly id: string;
  readonly title: string;
  /** Sentences that belong under it: the figures that are common practice, the omissions. */
  readonly notes: readonly string[];
  /** A sentence that belongs above it: the columns that say the same in every row. */
  readonly above?: string;
  readonly columns: readonly Column[];
  /** Each as long as {@link columns}. */
  readonly rows: readonly (readonly Cell[])[];
}

export interface Column {
  /** Stable, for JSON and spreadsheets, with the unit in it: "cutLengthM". */
  readonly id: string;
  /** For people, with the unit: "Cut length, m". */
  readonly title: string;
  readonly align: "start" | "end";
  /** Left empty on purpose, for a pen. */
  readonly toFillIn?: true;
  /**
   * `programs`: only in CSV and JSON, where every plan has it; people read it in another column, in the unit of the plan.
   * `people`: in every other form.
   */
  readonly only?: "programs" | "people";
}

/** Text, a number with the text that people read, or an empty cell. */
export type Cell = string | Quantity | null;

export interface Quantity {
  /** Unrounded, in the unit of its column. */
  readonly value: number;
  /** With the accuracy it has, without the unit: "2.68", "1,250". */
  readonly text: string;
}
