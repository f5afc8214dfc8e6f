import type { Protection } from "../../model/run.ts";

/** "ISO 8820-3 Type C", and "ISO 8820-3 Type C, as stated at panel" if only its fuse panel states it; undefined if neither does. */
export function familyInWords({
  family,
  familyStatedAt,
}: Pick<Protection, "family" | "familyStatedAt">): string | undefined {
  return familyStatedAt === undefined ? family : `${family}, as stated at ${familyStatedAt}`;
}
