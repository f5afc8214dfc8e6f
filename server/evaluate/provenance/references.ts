import { words } from "../../../library/model/record.ts";

/** The reference in a record's value to a terminal, a part or a circuit, as the recorder writes them. */
export function referenceIn(value: unknown): Reference | undefined {
  if (typeof value !== "object" || value === null) return undefined;
  const { kind, id, part, terminal } = value as Readonly<Record<string, unknown>>;
  if (kind === "terminal" && typeof part === "number" && typeof terminal === "string")
    return { record: part, terminal };
  return words.includes(kind as never) && typeof id === "number" ? { record: id } : undefined;
}

export interface Reference {
  readonly record: number;
  readonly terminal?: string;
}
