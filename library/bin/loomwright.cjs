#!/usr/bin/env node
// Starts the bundle that `npm run build` puts into dist. Says so plainly when that has not been done.

const { existsSync } = require("node:fs");
const { join } = require("node:path");

const bundle = join(__dirname, "../dist/command.cjs");

if (existsSync(bundle)) {
  require(bundle);
} else {
  console.error(
    "loomwright: this copy has not been built yet (dist/command.cjs is missing). Run: npm run build",
  );
  process.exitCode = 2;
}
