import { readdirSync, statSync } from "node:fs";
import { join, relative } from "node:path";
import { expect, test } from "vitest";
import { fromEnvironment } from "../harness/editor-server.ts";
import { useEditor } from "../harness/use-editor.ts";

const editor = useEditor({ trustEverything: true });

// Half of it is the layout, the typeface and the PDF code. The library for a new build shares its bundles with the server.
// At most 0.45 MB are the sun and the places of the world, and 0.25 the boards: ways, rules with their pages, front views, the view. `npm run bench` holds the same bound.
test("the packed extension is at most 6 MB", () => {
  expect(statSync(fromEnvironment("LOOMWRIGHT_VSIX")).size).toBeLessThanOrEqual(6e6);
});

test("what gets installed is all that is needed without a network, and no sources", () => {
  const files = installedFiles();
  for (const needed of [
    "dist/extension.cjs",
    "dist/language-server.cjs",
    "dist/plan-worker.cjs",
    "dist/layout-worker.cjs",
    "dist/diagram-page.js",
    "dist/diagram-page.css",
    "dist/layout-worker.cjs",
    "dist/paper.cjs",
    "dist/DejaVuSans.ttf",
    "dist/DejaVuSans-Bold.ttf",
    "dist/world.json",
    "dist/typescript.cjs",
    "dist/quickjs.wasm",
    "dist/library-rest.tar.br",
    "dist/library-rest.json",
    "dist/THIRD-PARTY-NOTICES.txt",
    "dist/rules/conductor/ampacity.md",
    "dist/templates/van.txt",
    "dist/templates/folder/package.json",
    "media/icon.png",
    "media/finding.png",
  ]) {
    expect(files).toContain(needed);
  }
  expect(files.filter((file) => /\.[mc]?ts$|node_modules|\.map$/.test(file))).toEqual([]);
});

function installedFiles(): string[] {
  const extensions = join(editor.server().data, "extensions");
  const ours = readdirSync(extensions).find((name) => name.startsWith("loomwright."));
  if (!ours) throw new Error(`the extension is not among ${readdirSync(extensions)}`);
  return readdirSync(join(extensions, ours), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) =>
      relative(join(extensions, ours), join(entry.parentPath, entry.name)).replaceAll("\\", "/"),
    );
}
