import { createColors } from "picocolors";
import type { Paint } from "../core/index.ts";
import type { Flags } from "./flags.ts";

/** Prints the answer: the text, or with `--json` the value alone. */
export function answer(flags: Flags, value: unknown, text: () => string): void {
  process.stdout.write(flags.json ? `${JSON.stringify(value)}\n` : text());
}

/** Says something beside the answer, on standard error. */
export function note(flags: Flags, text: string): void {
  if (!flags.quiet) process.stderr.write(`${text}\n`);
}

/** Columns of the terminal, within what reads well; 80 for a file or a pipe. */
export function textWidth(): number {
  return Math.min(110, Math.max(60, process.stdout.columns ?? 80));
}

/** Colours on a terminal that wants them, none elsewhere. */
export function paint(): Paint {
  const wanted = process.stdout.isTTY === true && !process.env.NO_COLOR && process.env.TERM !== "dumb";
  const colors = createColors(wanted);
  return { strong: colors.bold, faint: colors.dim, bad: colors.red, warn: colors.yellow };
}

const PATIENCE_ms = 1000;

/** A line of progress that rewrites itself: on a terminal alone, and only once a second has passed. */
export class Progress {
  readonly #shown: boolean;
  readonly #start_ms: number = Date.now();
  #last_ms = 0;

  constructor(flags: Flags) {
    this.#shown = process.stderr.isTTY === true && !flags.quiet;
  }

  readonly tell = (done_frac: number, says: string): void => {
    const now_ms = Date.now();
    if (!this.#shown || now_ms - this.#start_ms < PATIENCE_ms || now_ms - this.#last_ms < 100) return;
    this.#last_ms = now_ms;
    process.stderr.write(
      `\r\x1b[K${Math.floor(done_frac * 100)} % ${says.replace(/\p{Cc}/gu, " ").slice(0, 60)}`,
    );
  };

  end(): void {
    if (this.#last_ms > 0) process.stderr.write("\r\x1b[K");
  }
}
