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
/** Before this much is done, what is left cannot be told from it. */
const TELLING_frac = 0.04;

/** A line of progress that rewrites itself: on a terminal alone, and only once a second has passed. */
export class Progress {
  readonly #shown: boolean;
  readonly #start_ms: number = Date.now();
  #last_ms = 0;

  constructor(flags: Flags) {
    this.#shown = process.stderr.isTTY === true && !flags.quiet;
  }

  readonly tell = (done_frac: number, says: string): void => {
    this.#write(done_frac, says.replace(/\p{Cc}/gu, " ").slice(0, 60));
  };

  /** As `tell`, for work that goes on evenly from the start: with the time left. */
  readonly tellEven = (done_frac: number, says: string): void => {
    const left = done_frac < TELLING_frac ? "" : `, ${leftWords(done_frac, Date.now() - this.#start_ms)}`;
    this.#write(done_frac, says + left);
  };

  #write(done_frac: number, words: string): void {
    const now_ms = Date.now();
    if (!this.#shown || now_ms - this.#start_ms < PATIENCE_ms || now_ms - this.#last_ms < 100) return;
    this.#last_ms = now_ms;
    process.stderr.write(`\r\x1b[K${Math.floor(done_frac * 100)} % ${words}`);
  }

  end(): void {
    if (this.#last_ms > 0) process.stderr.write("\r\x1b[K");
  }
}

/** "about 12 s left"; coarser where it is longer. */
function leftWords(done_frac: number, past_ms: number): string {
  const left_s = (past_ms / 1000) * (1 / done_frac - 1);
  return left_s < 90 ? `about ${Math.ceil(left_s)} s left` : `about ${Math.round(left_s / 60)} min left`;
}
