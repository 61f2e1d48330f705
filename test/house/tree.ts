import { execFileSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import ts from "typescript";

export const root: string = dirname(dirname(dirname(fileURLToPath(import.meta.url))));

/** Rooms of `core`, in order: a room imports itself and rooms named before it. README and disk must say the same. */
export const rooms = [
  "quantity",
  "matter",
  "heat",
  "sky",
  "cooler",
  "trip",
  "safety",
  "forecast",
  "ensemble",
  "whatif",
  "plan",
  "camp",
  "tell",
] as const;

/** Rooms whose exports are laws and data of the physical or medical world, and so name their source. */
export const sourcedRooms: readonly string[] = ["matter", "heat", "sky", "safety"];

/** The folders of the top level, each told of in the README. */
export const folders: readonly string[] = [
  ".ci",
  "app",
  "bench",
  "cli",
  "core",
  "docs",
  "examples",
  "schema",
  "scripts",
  "test",
];

/** Folders in which a new file is the project's own before it is tracked. A person's trips lie in none of them. */
const ownFolders: readonly string[] = ["app", "bench", "cli", "core", "scripts", "test"];

function walk(folder: string): string[] {
  return readdirSync(join(root, folder), { withFileTypes: true }).flatMap((entry) => {
    const path = folder === "" ? entry.name : `${folder}/${entry.name}`;
    if (!entry.isDirectory()) return [path];
    return folder !== "" || folders.includes(entry.name) ? walk(path) : [];
  });
}

/**
 * Every file of the project, tracked or about to be, by its path from the root. What else a person keeps in the clone is
 * no business of a check. Without git: what is on disk in the known folders.
 */
export const files: readonly string[] = listFiles();

function listFiles(): string[] {
  const git = (...args: string[]): string[] =>
    execFileSync("git", ["ls-files", "-z", ...args], { cwd: root, encoding: "utf8", stdio: "pipe" }).split(
      "\0",
    );
  try {
    if (!existsSync(join(root, ".git"))) return walk("").sort();
    const listed = [...git("--cached"), ...git("--others", "--exclude-standard", "--", ...ownFolders)];
    return listed.filter((path) => path !== "" && existsSync(join(root, path))).sort();
  } catch {
    return walk("").sort();
  }
}

export function read(path: string): string {
  return readFileSync(join(root, path), "utf8");
}

/** The files of one world (`core`, `cli`, `test` …) that hold TypeScript. */
export function typescriptIn(world: string): string[] {
  return files.filter((path) => path.startsWith(`${world}/`) && path.endsWith(".ts"));
}

/** The room of a file of core; null for core's own door. */
export function roomOf(path: string): string | null {
  const parts = path.split("/");
  return parts[0] === "core" && parts.length > 2 ? parts[1]! : null;
}

/** One file as a syntax tree, with parents set. */
export function parse(path: string): ts.SourceFile {
  return ts.createSourceFile(path, read(path), ts.ScriptTarget.ES2022, true);
}

/** `path:line` of a node, as an editor opens it. */
export function at(node: ts.Node): string {
  const file = node.getSourceFile();
  const path = file.fileName.startsWith(root) ? file.fileName.slice(root.length + 1) : file.fileName;
  return `${path}:${file.getLineAndCharacterOfPosition(node.getStart(file)).line + 1}`;
}

/** Visits a node and everything below it. */
export function visit(node: ts.Node, see: (node: ts.Node) => void): void {
  see(node);
  ts.forEachChild(node, (child) => visit(child, see));
}
