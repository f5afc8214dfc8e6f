import {
  chmodSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import * as nodeFiles from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { type Disk, makeNamedFolder, type WriteOptions, writeWhole } from "./atomic-write.ts";
import { sealed } from "./seal.ts";

let folder: string;
const at = (name: string) => join(folder, name);

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "loomwright-write-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const list = "# Wires\n\n- one\n";
/** The same list in its written form. */
const ours = sealed("wires.md", list).toString();
const write = (name: string, content: string | Uint8Array, options: Partial<WriteOptions> = {}) =>
  writeWhole(at(name), content, { force: false, ...options });
const why = async (name: string, options: Partial<WriteOptions> = {}) => {
  const written = await write(name, list, options);
  return written.written ? "written" : written.why;
};

describe("writing", () => {
  test("a new file, text or bytes", async () => {
    expect(await write("wires.md", list)).toEqual({ written: true, path: at("wires.md") });
    expect(await write("wires.bin", new Uint8Array([1, 2]))).toEqual({
      written: true,
      path: at("wires.bin"),
    });
    expect(readFileSync(at("wires.md"), "utf8")).toBe(ours);
    expect([...readFileSync(at("wires.bin"))]).toEqual([1, 2]);
    expect(readdirSync(folder).sort()).toEqual(["wires.bin", "wires.md"]);
  });

  test("over a file of ours, which keeps its mode", async () => {
    writeFileSync(at("wires.md"), ours);
    chmodSync(at("wires.md"), 0o640);
    expect(await write("wires.md", `more\n${list}`)).toMatchObject({ written: true });
    expect(readFileSync(at("wires.md"), "utf8")).toBe(sealed("wires.md", `more\n${list}`).toString());
    expect(statSync(at("wires.md")).mode & 0o777).toBe(0o640);
  });

  test("through a link, which stays one", async () => {
    mkdirSync(at("elsewhere"));
    writeFileSync(at("elsewhere/real.md"), ours);
    symlinkSync(at("elsewhere/real.md"), at("wires.md"));
    expect(await write("wires.md", `more\n${list}`)).toMatchObject({ written: true });
    expect(lstatSync(at("wires.md")).isSymbolicLink()).toBe(true);
    expect(readFileSync(at("elsewhere/real.md"), "utf8")).toBe(
      sealed("wires.md", `more\n${list}`).toString(),
    );
    expect(readdirSync(at("elsewhere"))).toEqual(["real.md"]);
  });

  test("a name as long as a disk takes", async () => {
    const name = `${"w".repeat(252)}.md`;
    expect(await write(name, list)).toMatchObject({ written: true });
    expect(await why(`w${name}`)).toBe("has a name that is too long");
  });
});

describe("refused, and nothing is changed", () => {
  test("a file that is not ours, unless forced", async () => {
    writeFileSync(at("wires.md"), "my notes");
    expect(await why("wires.md")).toBe("was not made by Loomwright; only --force overwrites it");
    expect(readFileSync(at("wires.md"), "utf8")).toBe("my notes");
    expect(readdirSync(folder)).toEqual(["wires.md"]);
    expect(await why("wires.md", { force: true })).toBe("written");
    expect(readFileSync(at("wires.md"), "utf8")).toBe(ours);
  });

  test("a foreign file behind a link", async () => {
    writeFileSync(at("notes.txt"), "my notes");
    symlinkSync(at("notes.txt"), at("wires.md"));
    expect(await why("wires.md")).toMatch(/^was not made by/);
    expect(readFileSync(at("notes.txt"), "utf8")).toBe("my notes");
  });

  test("a caller may know better what is ours", async () => {
    writeFileSync(at("bus.wire-numbers.txt"), "1 lamp");
    expect(await why("bus.wire-numbers.txt")).toMatch(/^was not made by/);
    const isOurs = (before: Uint8Array) => Buffer.from(before).toString() === "1 lamp";
    expect(await why("bus.wire-numbers.txt", { isOurs })).toBe("written");
  });

  test("a folder in the way, also when forced", async () => {
    mkdirSync(at("wires.md"));
    expect(await why("wires.md", { force: true })).toBe("is a folder");
    expect(readdirSync(folder)).toEqual(["wires.md"]);
  });

  test("a link to nothing, and one to itself", async () => {
    symlinkSync(at("gone.md"), at("wires.md"));
    expect(await why("wires.md", { force: true })).toBe("is a link to a missing file");
    symlinkSync(at("round.md"), at("round.md"));
    expect(await why("round.md", { force: true })).toBe("is a link that leads back to itself");
  });

  test("what is no ordinary file", async () => {
    expect(await writeWhole("/dev/null", ours, { force: true })).toMatchObject({
      written: false,
      why: "is not an ordinary file",
    });
  });

  test("a folder that is not there is not made", async () => {
    expect(await why("docs/wires.md")).toBe("is in a folder that does not exist");
    writeFileSync(at("docs"), "");
    expect(await why("docs/wires.md")).toBe("is below a file, not a folder");
  });

  test("a folder or a file that may only be read", async () => {
    mkdirSync(at("kept"));
    writeFileSync(at("kept/ours.md"), ours);
    mkdirSync(at("open"));
    writeFileSync(at("open/ours.md"), ours);
    chmodSync(at("open/ours.md"), 0o444);
    chmodSync(at("open"), 0o777);
    chmodSync(at("kept"), 0o555);
    chmodSync(folder, 0o755);
    const refused = "could not be written: permission denied";
    await asNobody(async () => {
      expect(await why("kept/wires.md")).toBe(refused);
      expect(await why("kept/ours.md")).toBe(refused);
      expect(await why("open/ours.md", { force: true })).toBe(refused);
    });
    expect(readdirSync(at("kept"))).toEqual(["ours.md"]);
    expect(readdirSync(at("open"))).toEqual(["ours.md"]);
  });
});

describe("nothing is left behind when", () => {
  const failing = (operation: "writeFile" | "chmod" | "rename", code: string): Disk => ({
    ...nodeFiles,
    async [operation](path: string) {
      // Imitates a disk that fills up in the middle: the file exists, but incomplete.
      if (operation === "writeFile") writeFileSync(path, "ha");
      throw Object.assign(new Error(code), { code });
    },
  });

  test.each([
    ["writeFile", "ENOSPC", "could not be written: the disk is full"],
    ["writeFile", "EIO", "could not be written: EIO"],
    ["chmod", "EPERM", "could not be written: permission denied"],
    ["rename", "EBUSY", "is in use by another program"],
  ] as const)("%s fails with %s", async (operation, code, reason) => {
    writeFileSync(at("wires.md"), sealed("wires.md", "before\n").toString());
    expect(await why("wires.md", { disk: failing(operation, code) })).toBe(reason);
    expect(readFileSync(at("wires.md"), "utf8")).toBe(sealed("wires.md", "before\n").toString());
    expect(readdirSync(folder)).toEqual(["wires.md"]);
  });

  test("it is cancelled before it begins", async () => {
    await expect(write("wires.md", ours, { signal: AbortSignal.abort(new Error("enough")) })).rejects.toThrow(
      "enough",
    );
    expect(readdirSync(folder)).toEqual([]);
  });

  test("it is cancelled before the rename", async () => {
    const cancel = new AbortController();
    const disk: Disk = {
      ...nodeFiles,
      async writeFile(...given) {
        await nodeFiles.writeFile(...given);
        expect(readdirSync(folder)).toHaveLength(1);
        cancel.abort(new Error("enough"));
      },
    };
    await expect(write("wires.md", ours, { signal: cancel.signal, disk })).rejects.toThrow("enough");
    expect(readdirSync(folder)).toEqual([]);
  });
});

describe("a named folder", () => {
  test("is made, and may be there already", async () => {
    expect(await makeNamedFolder(at("docs"))).toEqual({ written: true, path: at("docs") });
    expect(await makeNamedFolder(at("docs"))).toEqual({ written: true, path: at("docs") });
  });

  test("is made alone, and not over a file", async () => {
    expect(await makeNamedFolder(at("docs/wires"))).toMatchObject({
      why: "is in a folder that does not exist",
    });
    writeFileSync(at("docs"), "my notes");
    expect(await makeNamedFolder(at("docs"))).toMatchObject({ written: false, why: "is not a folder" });
  });
});

/** Root may write everywhere; if the tests run as root, they change to the user "nobody" for a moment. */
async function asNobody(act: () => Promise<void>): Promise<void> {
  const root = process.geteuid!() === 0;
  if (root) process.seteuid!(65_534);
  try {
    await act();
  } finally {
    if (root) process.seteuid!(0);
  }
}
