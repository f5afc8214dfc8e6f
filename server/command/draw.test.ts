import { execFileSync } from "node:child_process";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { CommandTester } from "./command.tester.ts";

let tester: CommandTester;
let folder: string;
beforeEach(() => {
  tester = new CommandTester();
  folder = tester.folder;
});
afterEach(() => tester.dispose());

const write = (name: string, text: string) => tester.write(name, text);
const loomwright = (...words: string[]) => tester.run(words);

const cart = `import { battery, build, circuit, scenario } from "loomwright";
build({ name: "tool cart", insulationC: 105 });
const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 80 });
circuit({ name: "lamp", from: bank.positive, returnTo: bank.negative, load: 3, oneWayFt: 8, gauge: 14, protect: 5 });
scenario({ name: "evening" });
scenario({ name: "night" });
`;
const lone = `import { circuit } from "loomwright";\ncircuit({ name: "fan", load: 2, oneWayFt: 10, gauge: 14, protect: 5 });\n`;

describe("draw", () => {
  test("one plan is an SVG on standard output, and nothing else", async () => {
    write("cart.ts", cart);
    const { code, out, err } = await loomwright("draw");
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out).toMatch(/^<svg [\s\S]*<\/svg>\n$/);
    expect(out).toContain("tool cart, wiring diagram");
    expect(out).toContain("14 AWG · 8 ft<");
  });

  test("--colours draws conductors in the colours of their insulation; without it, black on white", async () => {
    write("cart.ts", cart);
    const [plain, coloured] = [await loomwright("draw"), await loomwright("draw", "--colours")];
    const colours = (svg: string) => new Set(svg.match(/(?<=stroke=")#\w+/g));
    expect([...colours(plain.out)].filter((one) => !["#000000", "#444444"].includes(one))).toEqual([]);
    expect(colours(coloured.out)).toContain("#d40000");
    expect(coloured.out).toContain("in conductor colours</text>");
    expect(coloured.out).toMatch(/ · red<\/text>/);
  });

  test("the view and the scenario that are asked for", async () => {
    write("cart.ts", cart);
    const { out } = await loomwright("draw", "--view", "one-line", "--scenario", "night");
    expect(out).toContain("tool cart, one-line diagram");
    expect(out).toContain("scenario: night");
    expect(out).toContain("14 AWG · 8 ft · 3 A<");
  });

  describe("--view board", () => {
    const hut = `import { busBar, surface } from "loomwright";
const board = surface({ name: "board", size: { widthMm: 600, heightMm: 400 } });
busBar({ name: "bar", size: { widthMm: 200, heightMm: 40 }, at: { on: board, leftMm: 50, topMm: 60 } });
`;
    const lid = `surface({ name: "lid", size: { widthMm: 300, heightMm: 300 }, orientation: "ceiling" });\n`;

    test("the front view of the only surface is an SVG on standard output", async () => {
      write("hut.ts", hut);
      const { code, out, err } = await loomwright("draw", "--view", "board");
      expect({ code, err }).toEqual({ code: 0, err: "" });
      expect(out).toContain("<title>hut.ts, front view of board</title>");
    });

    test("of several surfaces, standard output and an SVG hold the one that is named", async () => {
      write("hut.ts", hut + lid);
      const unnamed = await loomwright("draw", "--view", "board");
      expect(unnamed.code).toBe(2);
      expect(unnamed.err).toContain('name a surface with --surface, "board", "lid"');
      const inFile = await loomwright("draw", "--view", "board", "--out", "hut.svg");
      expect(inFile.code).toBe(2);
      expect(inFile.err).toContain("only a PDF holds several surfaces");
      expect(existsSync(join(folder, "hut.svg"))).toBe(false);
      const { code, out } = await loomwright("draw", "--view", "board", "--surface", "lid");
      expect(code).toBe(0);
      expect(out).toContain("front view of lid</title>");
      const unknown = await loomwright("draw", "--view", "board", "--surface", "led");
      expect(unknown.code).toBe(2);
      expect(unknown.err).toContain('no surface called "led". It has "board", "lid".');
    });

    test("a folder gets a file for each surface, and a PDF a page for each", async () => {
      write("hut.ts", hut + lid);
      const { code, out } = await loomwright("draw", "--view", "board", "--out", "drawings");
      expect(code).toBe(0);
      expect(out).toContain("drawings/hut.board-1.svg: the front view of board in hut.ts\n");
      expect(readFileSync(join(folder, "drawings/hut.board-2.svg"), "utf8")).toContain("front view of lid");
      expect((await loomwright("draw", "--view", "board", "--out", "hut.pdf")).code).toBe(0);
      const pdf = readFileSync(join(folder, "hut.pdf"), "latin1");
      expect(pdf.match(/\/Type \/Page\b/g)).toHaveLength(2);
    });

    test("--template writes the true size as PDF on A4 sheets, as SVG in mm, or as DXF", async () => {
      write("hut.ts", hut + lid);
      const pdf = await loomwright("draw", "--view", "board", "--template", "--out", "hut.pdf");
      expect(pdf).toEqual({
        code: 0,
        err: "",
        out: "hut.pdf: the drilling template of board, lid in hut.ts\n",
      });
      const bytes = readFileSync(join(folder, "hut.pdf"), "latin1");
      expect(bytes).toContain("/PrintScaling /None");
      // 600 × 400 mm over strips of 180 × 253 mm upright, and 300 × 300 mm over as many as 2 × 2.
      expect(bytes.match(/\/Type \/Page\b/g)).toHaveLength(4 * 2 + 2 * 2);
      const ofLid = ["draw", "--view", "board", "--template", "--surface", "lid"];
      expect((await loomwright(...ofLid, "--out", "lid.svg")).code).toBe(0);
      expect(readFileSync(join(folder, "lid.svg"), "utf8")).toMatch(/ width="[\d.]+mm" height="[\d.]+mm"/);
      expect((await loomwright(...ofLid, "--out", "lid.dxf")).code).toBe(0);
      expect(readFileSync(join(folder, "lid.dxf"), "utf8")).toContain("AC1009");
      // It is ours, and so it is written again.
      expect((await loomwright(...ofLid, "--out", "lid.dxf")).code).toBe(0);
      writeFileSync(join(folder, "lid.dxf"), "0\nSECTION\nmine\n");
      expect((await loomwright(...ofLid, "--out", "lid.dxf")).err).toContain("was not made by Loomwright");
      expect((await loomwright(...ofLid)).err).toContain("--template needs --out");
      expect((await loomwright(...ofLid, "--out", "lid.png")).err).toContain(".pdf, .svg or .dxf");
      expect((await loomwright(...ofLid, "--conductors", "--out", "lid.pdf")).err).toContain(
        "--conductors is not for --template",
      );
    });

    test("a surface with a mistake is named, beside those that are drawn and alone", async () => {
      write("hut.ts", `${hut}surface({ name: "lid", size: { widthMm: -1, heightMm: 300 } });\n`);
      const others = await loomwright("draw", "--view", "board");
      expect(others.out).toContain("<title>hut.ts, front view of board</title>");
      expect(others.err).toContain("the surface lid has a mistake, and is not drawn");
      const asked = await loomwright("draw", "--view", "board", "--surface", "lid");
      expect([asked.code, asked.out]).toEqual([2, ""]);
      expect(asked.err).toContain("no surface that was asked for could be read");
      expect(asked.err).not.toContain("has no surface called");
    });

    test("a plan without a surface has none, and options of another view are refused", async () => {
      write("cart.ts", cart);
      const none = await loomwright("draw", "--view", "board");
      expect(none.code).toBe(2);
      expect(none.err).toContain("the plan has no surface");
      expect((await loomwright("draw", "--view", "board", "--colours")).err).toContain(
        "--colours is not for",
      );
      expect((await loomwright("draw", "--conductors")).err).toContain("--conductors is for --view board");
    });
  });

  describe("the revision in the title block", () => {
    const revisionIn = (svg: string) => /revision: ([^<]*)</.exec(svg)?.[1];
    const git = (...words: string[]) =>
      execFileSync("git", ["-c", "user.name=a", "-c", "user.email=a@b.example", ...words], {
        cwd: folder,
        encoding: "utf8",
      }).trim();

    test("as it is given; without one there is no line", async () => {
      write("cart.ts", cart);
      const [without, given] = [await loomwright("draw"), await loomwright("draw", "--revision", "B <1>")];
      expect(revisionIn(given.out)).toBe("B &lt;1&gt;");
      expect(without.out).not.toContain("revision");
    });

    test("the commit, with + uncommitted once a file of the plan differs from it", async () => {
      write("cart.ts", `import "./lamps.ts";\n${cart}`);
      write("lamps.ts", lone.replace("fan", "side lamp"));
      git("init", "--quiet");
      git("add", ".");
      git("commit", "--quiet", "-m", "first");
      const commit = git("rev-parse", "--short=7", "HEAD");
      const drawn = async () => revisionIn((await loomwright("draw", "cart.ts", "--commit")).out);
      expect(await drawn()).toBe(commit);
      write("notes.txt", "no part of the plan");
      expect(await drawn()).toBe(commit);
      write("lamps.ts", lone.replace("fan", "stern lamp"));
      expect(await drawn()).toBe(`${commit} + uncommitted`);
    });

    test("no repository, or both ways at once: 2, with the reason", async () => {
      write("cart.ts", cart);
      expect(await loomwright("draw", "--commit")).toMatchObject({
        code: 2,
        err: expect.stringContaining("its commit is not known"),
      });
      const { err } = await loomwright("draw", "--commit", "--revision", "B");
      expect(err).toContain("give one of them");
    });

    test("in the report: a fact of the plan, and in its drawings", async () => {
      write("cart.ts", cart);
      for (const edition of ["inspector", "bench"]) {
        await loomwright("report", "--edition", edition, "--revision", "B", "--out", `${edition}.html`);
        const page = readFileSync(join(folder, `${edition}.html`), "utf8");
        expect(page).toContain("<dt>State of the plan</dt><dd>B</dd>");
        expect(revisionIn(page)).toBe("B");
      }
    });
  });

  describe("the sheet number in the title block", () => {
    const sheetsIn = (svg: string) => [...svg.matchAll(/>(sheet \d+ of \d+)</g)].map(([, text]) => text);

    test("drawings of several plans are numbered in their order; one alone has none", async () => {
      write("cart.ts", cart);
      write("lone.ts", lone);
      expect((await loomwright("draw", "--out", "drawings")).code).toBe(0);
      const drawn = (name: string) => readFileSync(join(folder, "drawings", name), "utf8");
      expect(sheetsIn(drawn("cart.wiring.svg"))).toEqual(["sheet 1 of 2"]);
      expect(sheetsIn(drawn("lone.wiring.svg"))).toEqual(["sheet 2 of 2"]);
      expect(sheetsIn((await loomwright("draw", "cart.ts")).out)).toEqual([]);
    });

    test("the two drawings of a report", async () => {
      write("cart.ts", cart);
      await loomwright("report", "--out", "all.html");
      await loomwright("report", "--edition", "bench", "--out", "bench.html");
      const sheets = (name: string) => sheetsIn(readFileSync(join(folder, name), "utf8"));
      expect(sheets("all.html")).toEqual(["sheet 1 of 2", "sheet 2 of 2"]);
      expect(sheets("bench.html")).toEqual([]);
    });
  });

  test("a line of the wire numbers that cannot be read is reported, and the drawing is there all the same", async () => {
    write("cart.ts", cart);
    write("cart.wire-numbers.txt", "<<<<<<< ours\n");
    const { code, out, err } = await loomwright("draw");
    expect(err).toBe(
      "loomwright: cart.wire-numbers.txt:1: This is a conflict that git left behind. Keep the lines of both sides, take out the marks, and run the command again. Numbers may be missing here until then.\n",
    );
    expect(out).toContain("tool cart, wiring diagram");
    expect(code).toBe(0);
  });

  test("a scenario that is not there is answered with those that are", async () => {
    write("cart.ts", cart);
    const { code, out, err } = await loomwright("draw", "--scenario", "noon");
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toContain('cart.ts: there is no scenario "noon", only "evening", "night".');
  });

  test.each([
    ["svg", "<svg "],
    ["png", "\u0089PNG"],
    ["pdf", "%PDF-"],
  ])("a .%s file", async (kind, beginning) => {
    write("cart.ts", cart);
    const { code, out, err } = await loomwright("draw", "--out", `cart.${kind}`);
    expect({ code, err, out }).toEqual({
      code: 0,
      err: "",
      out: `cart.${kind}: the wiring diagram of cart.ts\n`,
    });
    expect(readFileSync(join(folder, `cart.${kind}`), "latin1").startsWith(beginning)).toBe(true);
  });

  test("a folder gets a file for each plan", async () => {
    write("cart.ts", cart);
    write("lone.ts", lone);
    const { code, out } = await loomwright("draw", "--out", "drawings");
    expect({ code, out }).toEqual({
      code: 0,
      out: "drawings/cart.wiring.svg: the wiring diagram of cart.ts\ndrawings/lone.wiring.svg: the wiring diagram of lone.ts\n",
    });
    expect(readFileSync(join(folder, "drawings/lone.wiring.svg"), "utf8")).toContain("supply, not stated");
  });

  test("a file that is not ours is left alone, unless it is forced", async () => {
    write("cart.ts", cart);
    write("mine.svg", "<svg>drawn by hand</svg>");
    const refused = await loomwright("draw", "--out", "mine.svg");
    expect(refused.code).toBe(2);
    expect(refused.err).toContain("was not made by Loomwright");
    expect(readFileSync(join(folder, "mine.svg"), "utf8")).toBe("<svg>drawn by hand</svg>");
    expect((await loomwright("draw", "--out", "mine.svg", "--force")).code).toBe(0);
    expect((await loomwright("draw", "--out", "mine.svg")).code).toBe(0);
  });

  test.each([
    [["--view", "plan"], "--view is wiring, one-line or board"],
    [
      ["--out", "cart.gif"],
      "--out takes a file that ends in .svg, .png or .pdf, or a folder, not 'cart.gif'",
    ],
    [["--out", ""], "--out takes the name of a file or a folder"],
    [["--page", "A4"], "--page is for a PDF"],
    [["--page", "A4", "--out", "cart.svg"], "--page is for a PDF"],
    [["--page", "A5", "--out", "cart.pdf"], "--page is A4, Letter or A3"],
  ])("%j is not understood", async (words, said) => {
    write("cart.ts", cart);
    const { code, err } = await loomwright("draw", ...words);
    expect(code).toBe(2);
    expect(err).toContain(said);
    expect(existsSync(join(folder, "cart.gif"))).toBe(false);
  });

  test.each([[[]], [["--out", "both.svg"]]])("several plans do not fit where one does: %j", async (words) => {
    write("cart.ts", cart);
    write("lone.ts", lone);
    const { code, err } = await loomwright("draw", ...words);
    expect(code).toBe(2);
    expect(err).toContain("there are 2 plans");
    expect(existsSync(join(folder, "both.svg"))).toBe(false);
  });
});
