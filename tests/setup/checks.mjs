/** The checks that run none of our code, as steps of `npm test` and `npm run quick`. */

/** TypeScript 7 takes half of the time that version 6 takes, which the engine needs for its parser. */
const tsc = "node_modules/@typescript/native/bin/tsc";

export const formatAndLint = {
  what: "format and lint",
  words: ["node_modules/@biomejs/biome/bin/biome", "check", "--error-on-warnings", "."],
};

export const types = [
  { what: "types", words: [tsc, "-p", "."] },
  { what: "types of the diagram's page", words: [tsc, "-p", "extension/diagram/page"] },
  { what: "types of the stories in the editor", words: [tsc, "-p", "tests/editor"] },
];

export const deadCode = {
  what: "dead code",
  words: ["node_modules/knip/bin/knip.js", "--config", ".knip.json"],
};

/**
 * The tests outside the real editor.
 *
 * @param {...string} words further arguments for Vitest: files, all of them if none is given
 */
export function tests(...words) {
  return {
    what: "tests",
    words: [
      "node_modules/vitest/vitest.mjs",
      ...(words.length > 0 ? words : ["run"]),
      "--config",
      "tests/vitest.config.ts",
    ],
  };
}
