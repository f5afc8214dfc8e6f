import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { csvRecords } from "./csv-records.ts";
import { whyNotOurs } from "./recognise-own-files.ts";
import { isAsSealed, sealed } from "./seal.ts";

const header = "Number,Name,Size";
/** The smallest frame of a PNG: signature, header, and the last chunk. */
const png = (software: string) =>
  Buffer.concat([
    Buffer.from(`\u0089PNG\r\n\u001a\n\0\0\0\rIHDR....tEXtSoftware\0${software}IDAT`, "latin1"),
    Buffer.from("\0\0\0\0IENDcccc", "latin1"),
  ]);

/** A file of each kind as made, before it is written. */
const made: Readonly<Record<string, Buffer>> = {
  ".svg": Buffer.from("<svg><title>Bus</title><metadata>Loomwright 0.1.0</metadata></svg>\n"),
  ".html": Buffer.from('<head><meta name="generator" content="Loomwright 0.1.0"/></head>\n<p>2.5 mm²</p>\n'),
  ".md": Buffer.from("## Wires\n\n| No. | Measured |\n| --- | --- |\n| 1 |  |\n"),
  ".json": Buffer.from(
    `${JSON.stringify({ tool: { name: "loomwright" }, rows: [1, null, "Ω"] }, null, 2)}\n`,
  ),
  ".csv": Buffer.from(`\uFEFF${header}\r\n1,"lamp, ""red""",14\r\n2,pump,\r\n`),
  ".pdf": Buffer.from("%PDF-1.7\n<< /Producer (Loomwright 0.1.0) >>\n%%EOF\n"),
  ".png": png("Loomwright 0.1.0"),
};

describe.each(Object.keys(made))("%s", (ending) => {
  const content = made[ending]!;
  const path = `list${ending.toUpperCase()}`;
  const written = sealed(path, content);

  test("as it was written, it is ours, whatever the new content is", () => {
    expect(isAsSealed(path, written)).toBe(true);
    expect(whyNotOurs(path, written, "another content")).toBeUndefined();
    expect(Buffer.compare(written, sealed(path, content))).toBe(0);
  });

  test("one character more, fewer or other, at any place, and it is not", () => {
    let altered = 0;
    fc.assert(
      fc.property(fc.nat(written.length - 1), fc.constantFrom("more", "fewer", "other"), (at, what) => {
        const bytes = [...written];
        if (what === "more") bytes.splice(at, 0, 0x37);
        else if (what === "fewer") bytes.splice(at, 1);
        else bytes[at] = bytes[at] === 0x37 ? 0x38 : 0x37;
        const changed = Buffer.from(bytes);
        if (means(ending, changed) === means(ending, Buffer.from(written))) return;
        altered++;
        expect(isAsSealed(path, changed)).toBe(false);
        expect(whyNotOurs(path, changed, content)).not.toBeUndefined();
      }),
      { numRuns: 400 },
    );
    expect(altered, "changes that alter the meaning").toBeGreaterThan(300);
  });

  test("something added behind the end, and it is not", () => {
    expect(isAsSealed(path, Buffer.concat([written, Buffer.from("my notes\n")]))).toBe(false);
  });

  test("from an earlier version, without a seal, one is asked", () => {
    expect(whyNotOurs(path, content, content)).toBe(
      [".md"].includes(ending)
        ? "was not made by Loomwright"
        : "was changed since Loomwright wrote it, or was written by an earlier version",
    );
  });
});

/** The content that a change of layout preserves: line endings, quoting of a list, spacing of JSON. */
function means(ending: string, file: Buffer): string {
  const text = file
    .toString("utf8")
    .replace(/^\uFEFF/, "")
    .replaceAll("\r\n", "\n");
  if (ending === ".csv") return JSON.stringify(csvRecords(text).map(({ cells }) => cells));
  if (ending === ".png" || ending === ".pdf") return file.toString("latin1");
  if (ending !== ".json")
    return text.replace(/\s*(<!-- made by Loomwright, sha256 [0-9a-f]{64} -->)\s*$/, "\n$1");
  try {
    return JSON.stringify(JSON.parse(text));
  } catch {
    return text;
  }
}

test.each([".svg", ".html", ".md", ".json", ".csv"])("%s is still ours with other line ends", (ending) => {
  const written = sealed(`a${ending}`, made[ending]!).toString();
  for (const end of ["\n", "\r\n"])
    expect(isAsSealed(`a${ending}`, Buffer.from(written.replaceAll(/\r?\n/g, end)))).toBe(true);
});

/** Extension and existing content. */
const foreign: readonly (readonly [string, string])[] = [
  ["a.svg", "<svg><text>Loomwright</text></svg>"],
  ["a.svg", "<svg><metadata>another program</metadata></svg>"],
  ["a.html", "<h1>Loomwright</h1>"],
  ["a.md", "my notes on Loomwright"],
  ["a.json", '{"tool":{"name":"another"}}'],
  ["a.json", '{"tool":"loomwright"}'],
  ["a.json", "null"],
  ["a.json", '{"tool":'],
  ["a.csv", `${header},My notes\r\n`],
  ["a.csv", "Name,Number,Size\r\n"],
  ["a.pdf", "%PDF-1.7\n7 0 obj\n(another)\nendobj\n8 0 obj\n(Loomwright 0.1.0)\n<< /Producer 7 0 R >>"],
  ["a.pdf", "%PDF-1.7\n<< /Title (Loomwright 0.1.0) >>"],
  ["a.png", "\u0089PNG tEXtSoftware\0another"],
  // The name of another kind does not make it ours.
  ["a.md", '{"tool":{"name":"loomwright"}}'],
  ["a.ts", "<!-- made by Loomwright -->"],
  ["a", "<!-- made by Loomwright -->"],
];

test.each(foreign)("%s %j was not made by us", (path, before) => {
  const bytes = Buffer.from(before, /\.(png|pdf)$/.test(path) ? "latin1" : "utf8");
  expect(whyNotOurs(path, bytes, `${header}\r\n2,pump,12\r\n`)).toBe("was not made by Loomwright");
});

test("an empty file has nothing to lose", () => {
  expect(whyNotOurs("a.ts", Buffer.alloc(0), "")).toBeUndefined();
});

describe("rows that would be lost are named", () => {
  const list = (rows: readonly string[]) => ["No.,Name,Size,Measured", ...rows, ""].join("\r\n");
  const why = (now: readonly string[], edit: (written: string) => string) => {
    const before = sealed("a.csv", list(["1,lamp,14,", "2,pump,12,"])).toString();
    return whyNotOurs("a.csv", Buffer.from(edit(before)), list(now));
  };
  const same = ["1,lamp,14,", "2,pump,12,"];
  test("what was filled in, also when the plan has changed since", () => {
    const filled = (written: string) => written.replace("2,pump,12,,", "2,pump,12,0.4,");
    const words = 'holds entries that Loomwright did not write (rows "2, pump")';
    expect(why(same, filled)).toBe(words);
    expect(why(["1,lamp,10,", "2,pump,8,"], filled)).toBe(words);
    expect(why([], filled)).toContain('"2, pump"');
  });
  test("what was written over, added, or added as a column", () => {
    expect(why(same, (written) => written.replace("pump", "bilge pump"))).toContain('rows "2, bilge pump"');
    expect(why(same, (written) => `${written}3,horn,14,,\r\n`)).toContain('rows "3, horn"');
    expect(why(same, (written) => written.replaceAll(/,(?=\r\n)/g, ",mine,"))).toContain('"1, lamp"');
  });
  test("in Markdown too", () => {
    const sheet =
      "| No. | Name | Measured |\n| --- | --- | --- |\n| 1 | lamp \\| red |  |\n| 2 | pump |  |\n";
    const filled = sealed("a.md", sheet).toString().replace("pump |  |", "pump | 0.4 |");
    expect(whyNotOurs("a.md", Buffer.from(filled), sheet)).toContain('rows "2, pump"');
  });
});
