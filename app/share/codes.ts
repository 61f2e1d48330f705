import { fromBase45, toBase45 } from "./base45.ts";
import { bytesOfLink, SENT } from "./link.ts";

/*
 * A parcel as numbered codes. Each says of which parcel it is, the how manieth, and of how many, so that they can be read
 * in any order and more than once. The parcel's own checksum, its last four bytes, names it. The last colon keeps a
 * blank before it, which some readers would trim.
 */

const HEAD = "COLDSTOW1";
/**
 * Bytes in one code. 460 of them and the head make about 720 characters, a code of 85 modules a side: read in 18 of 20
 * tries at 3.9 pixels a module, turned, tilted, blurred and dimmed; one a tenth larger still is, a third larger often not.
 */
const BYTES = 460;
/** More than this many is no work for hands: a file does it better. */
export const MOST_CODES = 24;

const nameOf = (bytes: Uint8Array): string =>
  [...bytes.slice(-4)]
    .map((byte) => byte.toString(16).padStart(2, "0"))
    .join("")
    .toUpperCase();

/** The texts of the codes; null: it would be too many. */
export function codesOf(bytes: Uint8Array): string[] | null {
  const n = Math.ceil(bytes.length / BYTES);
  if (n > MOST_CODES) return null;
  // Even shares, so that the last code is as easy to read as the others.
  const share = Math.ceil(bytes.length / n / 2) * 2;
  return Array.from(
    { length: n },
    (_, i) => `${HEAD}:${nameOf(bytes)}:${i + 1}/${n}:${toBase45(bytes.slice(i * share, (i + 1) * share))}:`,
  );
}

export interface Gathered {
  /** Numbers that are still missing, from 1. */
  missing: readonly number[];
  of: number;
  /** The parcel, once all are there. */
  whole: Uint8Array<ArrayBuffer> | null;
}

/** Codes as they come in; those of several parcels are kept apart. */
export class CodeGatherer {
  readonly #sets = new Map<string, (Uint8Array<ArrayBuffer> | undefined)[]>();

  /** Takes what a code says; null: it is none of ours. A link is whole by itself. */
  add(text: string): Gathered | null {
    if (text.includes(SENT)) return wholeLink(text);
    const match = /^COLDSTOW1:([0-9A-F]{8}):(\d{1,2})\/(\d{1,2}):(.+):$/.exec(text);
    if (match === null) return null;
    const [, name, number, of] = match;
    const [at, n] = [Number(number), Number(of)];
    const bytes = fromBase45(match[4]!);
    if (bytes === null || at < 1 || at > n || n > MOST_CODES) return null;
    const key = `${name} ${n}`;
    const set = this.#sets.get(key) ?? Array.from({ length: n }, () => undefined);
    set[at - 1] = bytes;
    this.#sets.set(key, set);
    return gathered(set);
  }
}

function wholeLink(text: string): Gathered | null {
  try {
    return { missing: [], of: 1, whole: bytesOfLink(text) };
  } catch {
    return null;
  }
}

function gathered(set: readonly (Uint8Array<ArrayBuffer> | undefined)[]): Gathered {
  const missing = set.flatMap((part, i) => (part === undefined ? [i + 1] : []));
  const parts = set.filter((part) => part !== undefined);
  const whole = missing.length > 0 ? null : new Uint8Array(parts.flatMap((part) => [...part]));
  return { missing, of: set.length, whole };
}
