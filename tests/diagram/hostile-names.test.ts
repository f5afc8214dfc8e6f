import { describe, expect, test } from "vitest";
import { drawn, judgedText } from "./drawn-plans.ts";
import { piecesOf } from "./pieces-of-svg.ts";

const hostile = [
  '"><script>alert(1)</script>',
  "</title></svg><img src=x onerror=alert(1)>",
  "]]>",
  "<![CDATA[ <b> ]]>",
  "<!-- -- -->",
  "<?xml version='1.0'?><!DOCTYPE svg [<!ENTITY e SYSTEM 'file:///etc/passwd'>]>&e;",
  "&lt;script&gt;&#60;script&#62;&amp;",
  "' onload='alert(1)",
  "\u0000\u0001\u0008\u000b\u001b[31mred\u007f\u0085",
  "\ufffe\uffff",
  "\ud800 alone \udc00",
  "\u202eevitcaer\u2066\u200f right to left \u2069",
  "\u2028line\u2029paragraph\r\nbreaks\ttabs",
  "javascript:alert(1)",
  "url(https://example.invalid/x.svg#a)",
  "${7 * 7} {{7 * 7}} %3Cscript%3E",
  'loomwright-part" data-element="part:other',
  "a".repeat(10_000),
  "<".repeat(10_000),
  "🧨".repeat(5_000),
  "",
];

// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
const steering = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u200e\u200f\u2028-\u202e\u2066-\u2069]/;

/** The pictures of a harmless plan consist of these: a name must not add any other. */
const harmless = await everythingIn("plain name");

describe("a name cannot break out of the picture", () => {
  test.each(hostile.map((name) => [JSON.stringify(name).slice(0, 60), name] as const))(
    "%s",
    async (_, name) => {
      const pictures = await everythingIn(name);
      for (const [index, { tags, attributes, elements, texts, svg }] of pictures.entries()) {
        expect([...tags].filter((tag) => !harmless[index]!.tags.has(tag))).toEqual([]);
        expect([...attributes].filter((one) => !harmless[index]!.attributes.has(one))).toEqual([]);
        expect(elements.length).toBe(harmless[index]!.elements.length);
        expect(new Set(elements.map(({ id }) => id)).size).toBe(elements.length);
        for (const { id } of elements) expect(id).toMatch(/^[\w:%.~-]+$/);
        // No character reaches the page that controls a terminal, reverses the text or is invalid in XML.
        expect(svg).not.toMatch(steering);
        expect(svg.length).toBeLessThan(400_000);
        for (const { text } of texts) expect(text.length).toBeLessThan(400);
      }
    },
  );
});

async function everythingIn(name: string) {
  const text = JSON.stringify(name);
  const plan =
    await judgedText(`import { battery, build, busBar, cable, circuit, part, scenario } from "loomwright";
const name = ${text};
build({ name, voltage: 12 });
const bank = battery({ name, chemistry: "AGM", capacityAh: 100 });
const bus = busBar({ name: name + "b" });
const own = part({ name, terminals: ["one", "two"] });
cable({ name, from: bank.positive, to: bus.stud, lengthM: 1, mm2: 16, protect: 100 });
cable({ name, from: bus.stud, to: own.one, lengthM: 1, mm2: 16 });
circuit({ name, from: bus.stud, returnTo: bank.negative, load: 5, oneWayM: 3, mm2: 0.75, protect: 10, accept: { "conductor/voltage-drop": name } });
circuit({ name, load: 500, oneWayM: 3, mm2: 1.5 });
scenario({ name });
`);
  const numbers = () => name;
  const scenario = plan.network ? { scenario: 0 } : {};
  const pictures = [];
  for (const medium of ["paper", "screen"] as const)
    for (const view of ["one-line", "wiring"] as const) {
      const { svg } = await drawn(plan, { view, medium, numbers, title: name, ...scenario });
      pictures.push({ ...piecesOf(svg, (letters) => letters.length), svg });
    }
  return pictures;
}
