import type { Movable } from "../evaluate/checked-plan.ts";
import { plainWords } from "./plain-words.ts";

/** The reason why a number cannot be moved where it is written: it "is …". */
export function fixedInWords({
  why,
  name,
}: Pick<Movable & { readonly state: "fixed" }, "why" | "name">): string {
  const of = name === undefined ? "" : ` (${plainWords(name)})`;
  switch (why) {
    case "computed":
      return "computed, and no number in the text";
    case "reassigned":
      return `a variable that may be assigned again${of}`;
    case "in a factory":
      return "set in a function, which may make several parts";
    case "in a loop":
      return "set in a loop";
    case "from a spread":
      return "from an object that is spread or shared";
    case "a shared constant":
      return `a shared constant${of}`;
  }
}
