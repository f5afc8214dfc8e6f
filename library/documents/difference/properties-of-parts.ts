import type { Network, Part } from "../../model/network.ts";
import { type DevicePart, isDevice } from "../../model/part-roles.ts";
import type { ComparedFigure } from "../../model/parts/define-part.ts";
import { descriptorOf } from "../../model/parts/index.ts";
import { phraseInWords, terminalNameInWords } from "../../rules/wording/part-in-words.ts";
import { terminalOfPartInWords } from "../schedules/cells.ts";
import { propertiesInShort } from "./properties-in-short.ts";
import type { Property } from "./property.ts";
import { count, quantity, said, text } from "./property.ts";

/** The values that a builder states of a part, in comparable form, with defaults for those not stated. */
export function partProperties(part: Part, network: Network): Property[] {
  const values = part as unknown as Readonly<Record<string, unknown>>;
  const { properties, compared } = descriptorOf(part);
  return [
    ...Object.entries(properties).flatMap(([name, { words, unit }]): Property[] => {
      const value = values[name];
      if (words === undefined || value === undefined) return [];
      return typeof value === "number"
        ? [quantity(name, words, value, unit ?? "")]
        : said(value as string | boolean, name, words);
    }),
    ...(compared?.(part) ?? []).map(propertyOf),
    ...(part.kind === "part" ? joinsOf(part, network) : []),
    ...(isDevice(part) || part.kind === "fusePanel" ? propertiesInShort(part) : []),
    ...(isDevice(part) ? mountingOf(part, network) : []),
    ...said(part.source, "source", "source of its figures"),
    ...(part.price === undefined ? [] : [count("price", "price", part.price)]),
    ...Object.values<number>(part.terminals).flatMap((terminal) =>
      terminalProperties(part, network, terminal),
    ),
  ];
}

function propertyOf({ id, words, value }: ComparedFigure): Property {
  return "value" in value
    ? quantity(id, words, value.value, value.unit)
    : text(id, words, phraseInWords(value));
}

function joinsOf({ joins }: Part & { readonly kind: "part" }, { terminals }: Network): Property[] {
  return joins.map(({ between: [one, other], ohm }) => {
    const ends = [terminals[one]?.name ?? "", terminals[other]?.name ?? ""].join(" to ");
    return quantity(`joins.${ends}`, `inside, ${ends}`, ohm * 1000, "mΩ");
  });
}

function mountingOf({ mountedOn }: DevicePart, { parts, terminals }: Network): Property[] {
  if (mountedOn === undefined) return [];
  const { part, name } = terminals[mountedOn]!;
  const text = terminalOfPartInWords(parts[part]!.name, name);
  return [{ id: "on", words: "mounted on", value: { as: "end", text, end: { part, terminal: name } } }];
}

function terminalProperties(part: Part, network: Network, index: number): Property[] {
  const { name, termination, torqueNm } = network.terminals[index]!;
  const words = terminalNameInWords(part, name).replace(/^(?:the|a) /, "");
  return [
    ...said(termination, `${name}.termination`, `${words}, fastened by`),
    ...(torqueNm === undefined ? [] : [count(`${name}.torqueNm`, `${words}, torque in N·m`, torqueNm)]),
  ];
}
