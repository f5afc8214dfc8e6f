import { existsSync } from "node:fs";

/**
 * Fails a test that uses the built package with one plain sentence where nothing has been built. Each bundle of the package's `dist` is
 * there, or none.
 */
export function expectBuilt(): void {
  if (!existsSync(new URL("../../library/dist/command.cjs", import.meta.url)))
    throw new Error("library/dist is not built, and this test uses the built package. Run: npm run build");
}
