import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { resultCache } from "./result-cache.ts";

let around: string;
let folder: string;
beforeEach(() => {
  around = mkdtempSync(join(tmpdir(), "loomwright-results-"));
  folder = join(around, "deep/kept");
});
afterEach(() => rmSync(around, { recursive: true, force: true }));

async function keep(entries: Readonly<Record<string, string>>): Promise<void> {
  const cache = resultCache(folder);
  for (const [key, text] of Object.entries(entries)) await cache.write(key, text);
  cache.close();
}

function kept(key: string): string | undefined {
  return resultCache(folder).read(key);
}

describe("what was kept", () => {
  test.each(["", "text", "two\nlines\n", "ü 🔋 \u0000", "x".repeat(100_000)])(
    "%j is there again",
    async (text) => {
      await keep({ key: text });
      expect(kept("key")).toBe(text);
    },
  );

  test("is for this user's eyes only, and nothing else is left behind", async () => {
    await keep({ one: "1", two: "2" });
    expect(readdirSync(folder).sort()).toEqual(["one", "two"]);
    // Windows has no such modes; there the system keeps the user's folder separate.
    const modes = [folder, join(folder, "one")].map((path) => statSync(path).mode & 0o777);
    expect(modes).toEqual(process.platform === "win32" ? modes : [0o700, 0o600]);
  });

  test("is not there under another key", async () => {
    await keep({ one: "1" });
    expect(kept("two")).toBeUndefined();
  });

  test.each([
    ["cut off", (file: string) => file.slice(0, -1)],
    ["with a byte changed", (file: string) => file.replace("11 A", "12 A")],
    ["with more behind it", (file: string) => `${file} `],
    ["empty", () => ""],
    ["without its checksum", (file: string) => file.slice(65)],
  ])("%s, is not there, and can be kept anew", async (_, spoilt) => {
    await keep({ one: "11 A" });
    writeFileSync(join(folder, "one"), spoilt(readFileSync(join(folder, "one"), "utf8")));
    expect(kept("one")).toBeUndefined();
    await keep({ one: "11 A" });
    expect(kept("one")).toBe("11 A");
  });

  test("put under another's key is not there", async () => {
    await keep({ one: "1", two: "2" });
    writeFileSync(join(folder, "two"), readFileSync(join(folder, "one")));
    expect(kept("two")).toBeUndefined();
  });
});

describe("a folder that cannot be used", () => {
  test("because it is a file: nothing is kept, and nothing thrown", async () => {
    writeFileSync(join(around, "deep"), "");
    await keep({ one: "1" });
    expect(kept("one")).toBeUndefined();
  });

  test("because it is a link to elsewhere", async () => {
    mkdirSync(join(around, "deep"));
    mkdirSync(join(around, "elsewhere"));
    symlinkSync(join(around, "elsewhere"), folder);
    await keep({ one: "1" });
    expect(kept("one")).toBeUndefined();
    expect(readdirSync(join(around, "elsewhere"))).toEqual([]);
  });

  test("because others may write to it", async () => {
    await keep({ one: "1" });
    expect(kept("one")).toBe("1");

    chmodSync(folder, 0o777);
    expect(kept("one")).toBe(process.platform === "win32" ? "1" : undefined);
  });
});

describe("a bound", () => {
  const bound = { entries: 8, allBytes: 10_000, entryBytes: 1_000 };

  async function keepInTurn(count: number, length: number): Promise<void> {
    for (let place = 0; place < count; place++) {
      const cache = resultCache(folder, bound);
      await cache.write(`key ${place}`, "x".repeat(length));
      utimesSync(join(folder, `key ${place}`), 1_000 + place, 1_000 + place);
      cache.close();
    }
  }

  test("on their number: the oldest go", async () => {
    await keepInTurn(8, 10);
    expect(readdirSync(folder).length).toBe(8);
    await keepInTurn(9, 10);
    expect(readdirSync(folder).sort()).toEqual([3, 4, 5, 6, 7, 8].map((place) => `key ${place}`));
  });

  test("on what they take together", async () => {
    await keepInTurn(8, 900);
    expect(readdirSync(folder).length).toBe(8);
    const cache = resultCache(folder, { ...bound, allBytes: 5_000 });
    await cache.write("newest", "x");
    cache.close();
    expect(readdirSync(folder).sort()).toEqual(["key 5", "key 6", "key 7", "newest"]);
  });

  test("on one of them: it is not kept", async () => {
    const cache = resultCache(folder, bound);
    await cache.write("long", "x".repeat(1_001));
    await cache.write("just", "x".repeat(1_000));
    cache.close();
    expect(readdirSync(folder)).toEqual(["just"]);
  });
});
