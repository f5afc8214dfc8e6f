import {
  constants,
  copyFile,
  mkdir,
  mkdtemp,
  readdir,
  readFile,
  rename,
  rm,
  rmdir,
  writeFile,
} from "node:fs/promises";
import { basename, join } from "node:path";
import { commands, type ExtensionContext, type LogOutputChannel, Uri, window, workspace } from "vscode";
import { type EditorWords, editorWords } from "../server/language/plain-words.ts";
import { reasonOf } from "./command.ts";
import { installLibrary } from "./install-library.ts";
import { libraryArchive, libraryTarball } from "./library-tarball.ts";

/**
 * The command that makes a folder with a small plan in it, which type-checks and runs at once: the library travels in the
 * extension and needs no network. It overwrites nothing, and a folder is either made whole or not at all.
 *
 * @param given the folder to make, for callers that need not ask; it must be absent or empty
 * @param template the name of its template, for the same callers; left out: the first one
 */
export async function newBuild(
  context: ExtensionContext,
  log: LogOutputChannel,
  given?: unknown,
  template?: unknown,
): Promise<void> {
  const templates = join(context.extensionPath, "dist", "templates");
  const known: readonly Template[] = JSON.parse(await readFile(join(templates, "templates.json"), "utf8"));
  const chosen =
    given instanceof Uri
      ? (known.find(({ name }) => name === template) ?? known[0])
      : await askForTemplate(known);
  if (!chosen) return;
  const folder = given instanceof Uri ? given : await askForFolder();
  if (!folder) return;
  try {
    await makeBuild({
      dist: join(context.extensionPath, "dist"),
      folder: folder.fsPath,
      template: chosen.name,
    });
  } catch (error) {
    const why = reasonOf(error);
    log.error(`New build in ${folder.fsPath}: ${why}`);
    window.showErrorMessage(editorWords(`No build was made in ${folder.fsPath}: ${why}`));
    return;
  }
  await window.showTextDocument(Uri.joinPath(folder, "plan.ts"));
  if (workspace.getWorkspaceFolder(folder)) return;
  const openIt = "Open the Folder";
  const where = editorWords(`The new build is in ${folder.fsPath}.`);
  const choice = await window.showInformationMessage(where, openIt);
  if (choice === openIt) await commands.executeCommand("vscode.openFolder", folder);
}

/** An entry of templates.json. */
interface Template {
  readonly name: string;
  readonly title: string;
  readonly detail: string;
}

async function askForTemplate(known: readonly Template[]): Promise<Template | undefined> {
  const picked = await window.showQuickPick(
    known.map((template) => ({
      label: editorWords(template.title),
      description: editorWords(template.detail),
      template,
    })),
    {
      title: "What is it for?",
      placeHolder: "A plan to begin with. It is checked at once, and every value can be changed.",
    },
  );
  return picked?.template;
}

/** An empty folder is used as it is; in any other the build gets a new one of its own. */
async function askForFolder(): Promise<Uri | undefined> {
  const [parent] =
    (await window.showOpenDialog({
      title: "Where should the new build go?",
      openLabel: "Make It Here",
      canSelectFiles: false,
      canSelectFolders: true,
      ...(workspace.workspaceFolders?.[0] ? { defaultUri: workspace.workspaceFolders[0].uri } : {}),
    })) ?? [];
  if (!parent) return undefined;
  const present = await readdir(parent.fsPath);
  if (present.length === 0) return parent;
  const name = await window.showInputBox({
    title: "Name of the new folder",
    prompt: editorWords(`It is made in ${parent.fsPath}. No existing file is changed.`),
    value: "my-build",
    validateInput: (typed) => refusal(typed.trim(), present),
  });
  return name === undefined ? undefined : Uri.joinPath(parent, name.trim());
}

function refusal(name: string, present: readonly string[]): EditorWords | undefined {
  if (name === "") return editorWords("Give the folder a name.");
  if (/[<>:"/\\|?*\p{Cc}]/u.test(name) || /^\.+$|\.$/.test(name)) {
    return editorWords('A folder cannot be called that: leave out < > : " / \\ | ? * and a dot at the end.');
  }
  // Some disks ignore the case of letters.
  const taken = present.find((entry) => entry.toLowerCase() === name.toLowerCase());
  return taken ? editorWords(`${taken} exists already. Choose another name.`) : undefined;
}

interface NewBuild {
  /** The extension's own folder of bundles. */
  readonly dist: string;
  readonly folder: string;
  readonly template: string;
}

/**
 * Prepares everything in a hidden folder and moves it into place at the end. If anything fails, the moved files are removed
 * again: no half-made build is left.
 */
async function makeBuild({ dist, folder, template }: NewBuild): Promise<void> {
  const madeHere = await makeFolder(folder);
  const making = await mkdtemp(join(folder, ".being-made-"));
  const moved: string[] = [];
  try {
    await fill(making, { dist, template, name: basename(folder) });
    for (const entry of await readdir(making)) {
      await rename(join(making, entry), join(folder, entry));
      moved.push(entry);
    }
    await rmdir(making);
  } catch (error) {
    for (const entry of moved) await rm(join(folder, entry), { recursive: true, force: true });
    await rm(making, { recursive: true, force: true });
    if (madeHere) await rmdir(folder).catch(() => undefined);
    throw error;
  }
}

/** True if it did not exist before. Throws if a file has that name, or the folder is not empty. */
async function makeFolder(folder: string): Promise<boolean> {
  const present = await readdir(folder).catch((error: NodeJS.ErrnoException) => {
    if (error.code === "ENOENT") return undefined;
    throw new Error(error.code === "ENOTDIR" ? "there is a file of that name" : error.message);
  });
  if (present === undefined) {
    await mkdir(folder, { recursive: true });
    return true;
  }
  if (present.length > 0) throw new Error("the folder is not empty, and none of its files is overwritten");
  return false;
}

async function fill(
  folder: string,
  { dist, template, name }: Pick<NewBuild, "dist" | "template"> & { readonly name: string },
): Promise<void> {
  const templates = join(dist, "templates");
  const common = join(templates, "folder");
  const archive = await libraryArchive(dist);
  const { version } = await installLibrary(archive, folder);
  const values = { name: packageName(name), version };
  await copyFile(join(templates, `${template}.txt`), join(folder, "plan.ts"), constants.COPYFILE_EXCL);
  for (const file of await readdir(common)) {
    const text = await readFile(join(common, file), "utf8");
    const filled = text.replace(/\{\{(name|version)\}\}/g, (_, key: keyof typeof values) => values[key]);
    // npm and git would obey a file of that name in our own tree.
    await writeFile(join(folder, file === "gitignore" ? ".gitignore" : file), filled, { flag: "wx" });
  }
  await writeFile(join(folder, `loomwright-${version}.tgz`), await libraryTarball(archive), { flag: "wx" });
}

/** The folder's name as npm allows it. */
function packageName(folder: string): string {
  const name = folder
    .toLowerCase()
    .replace(/[^a-z0-9-]+/g, "-")
    .replace(/^-+|-+$/g, "");
  // The library's own name would make the package depend on itself.
  return name === "" || name === "loomwright" ? "my-build" : name;
}
