import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { isAbsolute, join, resolve } from "node:path";
import { version } from "../../library/package.json";
import type { KeptResults } from "./host.ts";

/** The owner of the folder, and the system. */
interface User {
  readonly env: NodeJS.ProcessEnv;
  readonly platform: NodeJS.Platform;
  readonly home: string;
}

/** The results of this user's earlier runs; undefined if the user has no folder for them. */
export function usersResults(user: User): KeptResults | undefined {
  const folder = cacheFolder(user);
  if (folder === undefined) return undefined;
  let digest: { readonly digest: string | undefined } | undefined;
  const tool = () => {
    digest ??= { digest: toolDigest() };
    return digest.digest;
  };
  return { folder, tool };
}

/**
 * The folder that keeps results of earlier runs: the user's own in the system's cache folder, or the one that LOOMWRIGHT_CACHE
 * states. Undefined if the user has no folder. Our own, because a package would replace five of these lines.
 */
export function cacheFolder({ env, platform, home }: User): string | undefined {
  if (env.LOOMWRIGHT_CACHE) return resolve(env.LOOMWRIGHT_CACHE);
  if (platform === "win32") return env.LOCALAPPDATA ? join(env.LOCALAPPDATA, "loomwright") : undefined;
  // The XDG Base Directory Specification 0.8: a path that is not absolute must be ignored.
  const stated = env.XDG_CACHE_HOME && isAbsolute(env.XDG_CACHE_HOME) ? env.XDG_CACHE_HOME : undefined;
  const usual = platform === "darwin" ? "Library/Caches" : ".cache";
  const caches = stated ?? (isAbsolute(home) ? join(home, usual) : undefined);
  return caches && join(caches, "loomwright");
}

/**
 * A digest of everything in Loomwright and the machine that a result may depend on: the version, our own bundles with all rules,
 * tables and limits, the parser, the sandbox, and the Node version that runs them. Undefined if the bundles are missing.
 */
function toolDigest(): string | undefined {
  const hash = createHash("sha256");
  hash.update(JSON.stringify([version, process.version, process.platform, process.arch]));
  try {
    for (const name of bundles) hash.update(readFileSync(new URL(`../dist/${name}`, import.meta.url)));
  } catch {
    return undefined;
  }
  return hash.digest("hex");
}

const bundles = ["command.cjs", "plan-worker.cjs", "quickjs.wasm", "typescript.cjs"];
