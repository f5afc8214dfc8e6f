import { describe, expect, test } from "vitest";
import { madeByUs } from "./made-by-us.ts";

const header = "Number,Name,Size";
const png = (software: string) => `\u0089PNG\r\n\u001a\n\0\0\0\rIHDR....tEXtSoftware\0${software}IDAT`;

/** Ending, what is there, whether it is ours. What is to be written is a CSV with `header`. */
const cases: readonly (readonly [string, string, boolean])[] = [
  ["a.svg", "<svg><title>Bus</title><metadata>Loomwright 0.1.0</metadata></svg>", true],
  ["a.svg", "<!-- made by Loomwright 0.1.0 --><svg></svg>", true],
  ["a.svg", "<svg><text>Loomwright</text></svg>", false],
  ["a.svg", "<svg><metadata>another program</metadata></svg>", false],
  ["a.html", '<head><meta name="generator" content="Loomwright 0.1.0"></head>', true],
  ["a.html", "<h1>Loomwright</h1>", false],
  ["a.md", "# Wires\n<!-- made by Loomwright -->", true],
  ["a.md", "# Wires\n<!-- made by Loomwright -->\n\n", true],
  ["a.md", "<!-- made by Loomwright -->\nand then my own notes", false],
  ["a.json", '{"tool":{"name":"loomwright","version":"0.1.0"}}', true],
  ["a.json", '{"tool":{"name":"another"}}', false],
  ["a.json", '{"tool":"loomwright"}', false],
  ["a.json", "null", false],
  ["a.json", '{"tool":', false],
  ["a.csv", `${header}\r\n1,lamp,14\r\n`, true],
  ["a.csv", `\uFEFF${header}\n`, true],
  ["a.csv", `${header},My notes\r\n`, false],
  ["a.csv", "Name,Number,Size\r\n", false],
  ["a.pdf", "%PDF-1.7\n<< /Producer (Loomwright 0.1.0) >>", true],
  ["a.pdf", "%PDF-1.7\n7 0 obj\n(Loomwright 0.1.0)\nendobj\n<< /Producer 7 0 R >>", true],
  [
    "a.pdf",
    "%PDF-1.7\n7 0 obj\n(another)\nendobj\n8 0 obj\n(Loomwright 0.1.0)\n<< /Producer 7 0 R >>",
    false,
  ],
  ["a.pdf", "%PDF-1.7\n<< /Title (Loomwright 0.1.0) >>", false],
  ["a.pdf", "%PDF-1.7\n<< /Producer (another) /Title (Loomwright) >>", false],
  ["a.png", png("Loomwright 0.1.0"), true],
  ["a.png", png("another"), false],
  ["A.SVG", "<svg><metadata>Loomwright 0.1.0</metadata></svg>", true],
  // The name of another kind does not make it one of ours.
  ["a.md", '{"tool":{"name":"loomwright"}}', false],
  ["a.ts", "<!-- made by Loomwright -->", false],
  ["a", "<!-- made by Loomwright -->", false],
  // Nothing to lose.
  ["a.ts", "", true],
];

describe("a file is ours by what it holds", () => {
  test.each(cases)("%s %j: %s", (path, before, ours) => {
    const bytes = Buffer.from(before, /\.(png|pdf)$/.test(path) ? "latin1" : "utf8");
    expect(madeByUs(path, bytes, `${header}\r\n2,pump,12\r\n`)).toBe(ours);
  });
});
