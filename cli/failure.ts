import { type Problem, problemsText } from "../core/index.ts";

/** What was handed in cannot be used, and the person can mend it: exit 2. */
export class InputError extends Error {
  override readonly name: string = "InputError";
  readonly file: string;
  readonly problems: readonly Problem[];

  constructor(file: string, problems: readonly Problem[]) {
    super(problemsText(problems, file));
    this.file = file;
    this.problems = problems;
  }
}

/** One mistake that has no line, such as a file that is not there. */
export function inputError(file: string, path: string, must: string, got: string): InputError {
  return new InputError(file, [{ line: null, path, must, got, near: null }]);
}

/** Node's word for a failed call of the system, without the path; "ENOENT" and its like are put in plain words. */
export function systemWords(error: unknown): string {
  const code = (error as { code?: unknown }).code;
  const known: Record<string, string> = {
    ENOENT: "nothing there",
    EACCES: "no permission",
    EPERM: "no permission",
    EISDIR: "a folder",
    ENOTDIR: "a path through something that is not a folder",
    EEXIST: "something else by that name",
    ENAMETOOLONG: "a name that is too long",
    ELOOP: "links in a circle",
    ENOSPC: "a full disk",
    EROFS: "a disk that cannot be written",
  };
  return typeof code === "string" ? (known[code] ?? code) : "something that cannot be read";
}
