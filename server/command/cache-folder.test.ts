import { resolve } from "node:path";
import { expect, test } from "vitest";
import { cacheFolder, usersResults } from "./cache-folder.ts";

const home = "/home/builder";

test.each([
  ["linux", {}, home, "/home/builder/.cache/loomwright"],
  ["linux", { XDG_CACHE_HOME: "/var/own" }, home, "/var/own/loomwright"],
  // XDG Base Directory Specification 0.8, "Basics": a relative path is invalid and must be ignored.
  ["linux", { XDG_CACHE_HOME: "own" }, home, "/home/builder/.cache/loomwright"],
  ["linux", { XDG_CACHE_HOME: "" }, home, "/home/builder/.cache/loomwright"],
  ["linux", {}, "", undefined],
  ["darwin", {}, "/Users/builder", "/Users/builder/Library/Caches/loomwright"],
  ["win32", { LOCALAPPDATA: "/c/local" }, "/c/builder", "/c/local/loomwright"],
  ["win32", {}, "/c/builder", undefined],
  ["linux", { LOOMWRIGHT_CACHE: "/kept" }, home, "/kept"],
  ["win32", { LOOMWRIGHT_CACHE: "/kept", LOCALAPPDATA: "/c/local" }, home, "/kept"],
  ["linux", { LOOMWRIGHT_CACHE: "kept" }, home, resolve("kept")],
  ["linux", { LOOMWRIGHT_CACHE: "" }, home, "/home/builder/.cache/loomwright"],
] as const)("on %s with %j and home %j", (platform, env, from, folder) => {
  expect(cacheFolder({ env, platform, home: from })).toBe(folder);
});

test("where there is no folder, nothing is kept", () => {
  expect(usersResults({ env: {}, platform: "win32", home: "" })).toBeUndefined();
  expect(usersResults({ env: {}, platform: "linux", home })).toMatchObject({
    folder: "/home/builder/.cache/loomwright",
  });
});
