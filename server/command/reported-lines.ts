/** Lines and columns from 1, columns in UTF-16 units; the end is the first position after the range. */
export interface Lines {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
}
