import type { InvalidValue } from "../../model/run.ts";
import type { Change, ProposedFix } from "../finding.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule } from "../rule.ts";

export const invalidValue = defineRule<Values>({
  id: "plan/invalid-value",
  title: "Invalid value",
  formerTitles: ["Value that cannot be used"],
  severity: "error",
  why: "A circuit or network with an invalid value is judged on less than you think, or not at all.",
  sources: [ownRequirement("The documentation of each property states its allowed values.")],
  fixable: true,
  acceptable: false,
  // Needs the values that the model could not read.
  check: ({ model }) =>
    model.invalid.map((invalid, index) => ({
      subject: invalid.name,
      at: { record: invalid.record, path: invalid.path },
      values: {
        property: invalid.path.join("."),
        wrong: invalid.wrong,
        given: invalid.given,
        allowed: invalid.allowed,
        nearest: invalid.nearest,
        stopsNetwork: invalid.stopsNetwork ?? false,
        // Once for each circuit: three of its values may be missing.
        leavesOutCircuit:
          (invalid.leavesOutCircuit ?? false) && model.invalid[index - 1]?.record !== invalid.record,
        ofPlaces: invalid.serves === "places" && model.layout !== undefined,
      },
      fixes: corrections(invalid),
    })),
  message({ property, wrong, given, allowed, nearest, stopsNetwork, leavesOutCircuit, ofPlaces }) {
    const what = [property, wrong].filter(Boolean).join(" ");
    const value = given === undefined ? "" : `: ${given}`;
    const tail = stopsNetwork
      ? " Currents, voltages and faults of the network connected with it are not judged until this is corrected."
      : leavesOutCircuit
        ? " Until this is corrected, the network is judged without this circuit, and its current is missing in the conductors that it shares."
        : ofPlaces
          ? " Until this is corrected, places are judged without it, and so are the ways, lengths and surroundings that follow from them."
          : "";
    if (nearest === undefined) return `${what}${value}. Allowed: ${allowed}.${tail}`;
    // No value is given if the property itself is the mistake.
    const meant = given === undefined ? nearest : `"${nearest}"`;
    return `${what}${value}. Did you mean ${meant}?${allowed === nearest ? "" : ` Allowed: ${allowed}.`}${tail}`;
  },
});

interface Values {
  /** As written, `protect.ratingA`; empty for the whole argument. */
  readonly property: string;
  readonly wrong: string;
  readonly given: string | undefined;
  readonly allowed: string;
  readonly nearest: string | undefined;
  readonly stopsNetwork: boolean;
  readonly leavesOutCircuit: boolean;
  /** Places, ways, lengths and surroundings in a plan with surfaces may depend on it. */
  readonly ofPlaces: boolean;
}

/** Suggestions: only the builder knows the intended value. */
function corrections({ record, path, given, nearest }: InvalidValue): ProposedFix[] {
  const suggest = (title: string, change: Change): ProposedFix[] => [
    { title, kind: "suggestion", changes: [change] },
  ];
  if (path.length === 0) return [];
  // No value is given if the property itself is the mistake.
  if (nearest !== undefined && given === undefined)
    return suggest(`Rename to ${nearest}`, { do: "rename", record, path, to: nearest });
  if (nearest !== undefined) return suggest(`Use "${nearest}"`, { do: "set", record, path, value: nearest });
  const [, number] = given?.match(/^"(\d+(?:\.\d+)?)"$/) ?? [];
  if (number !== undefined)
    return suggest(`Write ${number} as a number`, { do: "set", record, path, value: Number(number) });
  return [];
}
