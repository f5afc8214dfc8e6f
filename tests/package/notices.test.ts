import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build, type Metafile, type Plugin } from "esbuild";
import { beforeAll, describe, expect, it } from "vitest";

/*
 * No third-party work is shipped without its notice. The packages are those that the bundler really includes, so a new indirect
 * dependency is found too; files beside the bundles are listed by hand.
 */

const house = fileURLToPath(new URL("../..", import.meta.url));

const ofLibrary = [
  ...[
    "server/front/language-server.ts",
    "server/engine.ts",
    "server/command/main.ts",
    "server/output/paper.ts",
  ],
  ...["server/evaluate/plan-worker.ts", "server/output/layout-worker.ts", "library/plan/index.ts"],
];
const ofExtension = [...ofLibrary, "extension/extension.ts", "extension/diagram/page/page.ts"];
/** Files of a package that are copied and not bundled: WebAssembly and the typeface. */
const copied = ["@jitl/quickjs-ng-wasmfile-release-sync", "@resvg/resvg-wasm", "dejavu-fonts-ttf"];

let bundled: ReadonlyMap<string, readonly string[]>;

beforeAll(async () => {
  bundled = await packagesByEntry();
}, 60_000);

describe.each([
  ["the library", "library/dist/THIRD-PARTY-NOTICES.txt", ofLibrary],
  ["the extension", "extension/dist/THIRD-PARTY-NOTICES.txt", ofExtension],
] as const)("%s", (_, file, entries) => {
  const notices = readFileSync(join(house, file), "utf8").split(`\n${"-".repeat(80)}\n\n`);
  const noticeOf = (heading: string) => notices.filter((notice) => notice.startsWith(`${heading}\n`));
  let packages: string[] = [];

  beforeAll(() => {
    packages = [
      ...new Set([
        ...entries.flatMap((entry) => bundled.get(entry)!),
        ...copied.map((name) => `node_modules/${name}`),
      ]),
    ];
    expect(packages.length).toBeGreaterThan(25);
  });

  it("has a copyright line, a licence and a source of every package in its bundles", () => {
    for (const folder of packages) {
      const { name, version } = JSON.parse(readFileSync(join(house, folder, "package.json"), "utf8"));
      const [notice, ...others] = noticeOf(`${name} ${version}`);
      expect(others, name).toEqual([]);
      expect(notice, `${name} ${version} has no notice`).toBeDefined();
      expect(notice, name).toMatch(/copyright.{0,3}(?:\(c\)|©|\d{4}|[A-Z][a-z]+ [A-Z][a-z]+)/i);
      // The text of a licence is never shorter than the ISC's.
      expect(notice!.length, name).toBeGreaterThan(700);
      expect(notice, name).toMatch(/(?:as is|AS-IS|comes as is|without warrant)/i);
      expect(notice, name).toMatch(/^Source of this version: .+$/m);
    }
  });

  it("tells where the source is of what is under a licence that asks for it", () => {
    for (const name of ["elkjs", "@resvg/resvg-wasm"]) {
      const { version } = JSON.parse(readFileSync(join(house, "node_modules", name, "package.json"), "utf8"));
      const [notice] = noticeOf(`${name} ${version}`);
      expect(notice).toMatch(
        new RegExp(`source code is available[\\s\\S]{0,60}release ${version} of\\s+https://`),
      );
    }
  });

  it("names every crate that resvg's WebAssembly names, in the version that it names", () => {
    const module = readFileSync(join(house, "server/dist/resvg.wasm"), "latin1");
    const crates = new Map<string, Set<string>>();
    for (const [, name, version] of module.matchAll(/\/([a-z][\w-]*?)-(\d+\.\d+\.\d+)\/src\//g))
      crates.set(name!, (crates.get(name!) ?? new Set()).add(version!));
    expect(crates.size).toBeGreaterThan(30);
    const text = notices.filter((notice) => notice.startsWith("Inside @resvg/resvg-wasm")).join("\n");
    for (const [name, versions] of crates)
      for (const version of versions)
        expect(text, `${name} ${version}`).toMatch(
          new RegExp(`\\b${name} (?:[\\d.]+ and )?${version.replaceAll(".", "\\.")}`),
        );
  });

  it("names what is compiled into QuickJS's WebAssembly, and what TypeScript took from others", () => {
    const text = notices.join("\n");
    for (const part of [
      "Fabrice Bellard",
      "Emscripten authors",
      "Rich Felker",
      "compiler-rt",
      "LLVM Exceptions",
      "Unicode, Inc.",
    ])
      expect(text).toContain(part);
    const thirdParty = readFileSync(
      join(house, "node_modules/typescript/ThirdPartyNoticeText.txt"),
      "utf8",
    ).trim();
    expect(text.replaceAll("\r\n", "\n")).toContain(thirdParty.replaceAll("\r\n", "\n"));
    expect(text).toContain("Bitstream Vera");
  });
});

/** By entry: the folders of the packages that are bundled with it, relative to the house. */
async function packagesByEntry(): Promise<ReadonlyMap<string, readonly string[]>> {
  const plugin = join(house, "server/evaluate/sandbox/bundled-text-plugin.mjs");
  const { bundledText } = (await import(pathToFileURL(plugin).href)) as { readonly bundledText: Plugin };
  const { metafile } = await build({
    absWorkingDir: house,
    entryPoints: ofExtension,
    outdir: join(house, "never-written"),
    bundle: true,
    write: false,
    metafile: true,
    platform: "node",
    format: "cjs",
    external: ["vscode"],
    plugins: [bundledText],
    logLevel: "error",
    logOverride: { "empty-import-meta": "silent" },
  });
  return new Map(ofExtension.map((entry) => [entry, packagesIn(filesFrom(entry, metafile))]));
}

/** The file and all that it imports, directly or not. */
function filesFrom(entry: string, { inputs }: Metafile): ReadonlySet<string> {
  const reached = new Set([entry]);
  // A set can grow while it is gone through.
  for (const file of reached)
    for (const { path, external } of inputs[file]!.imports) if (!external) reached.add(path);
  return reached;
}

function packagesIn(files: ReadonlySet<string>): readonly string[] {
  return [...files].flatMap((file) => /^.*node_modules\/(?:@[^/]+\/)?[^/]+(?=\/)/.exec(file)?.[0] ?? []);
}
