// For esbuild: `import text from "bundled-text:./realm.ts"` gives the file and all it imports as one JavaScript text. Code that
// runs inside the sandbox is written, type-checked and linted like all other code, and shipped as text.

import { dirname, resolve } from "node:path";
import { build } from "esbuild";

export const bundledText = {
  name: "bundled-text",
  setup(outer) {
    outer.onResolve({ filter: /^bundled-text:/ }, ({ path, resolveDir }) => ({
      path: resolve(resolveDir, path.slice("bundled-text:".length)),
      namespace: "bundled-text",
    }));
    outer.onLoad({ filter: /.*/, namespace: "bundled-text" }, async ({ path }) => {
      const { outputFiles, metafile } = await build({
        entryPoints: [path],
        bundle: true,
        write: false,
        metafile: true,
        absWorkingDir: dirname(path),
        format: "esm",
        target: "es2022",
        minifySyntax: true,
        minifyWhitespace: true,
        logLevel: "error",
      });
      return {
        contents: outputFiles[0].text,
        loader: "text",
        watchFiles: Object.keys(metafile.inputs).map((input) => resolve(dirname(path), input)),
      };
    });
  },
};
