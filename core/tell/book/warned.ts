import { dangerLines, warningLines } from "../warningText.ts";
import type { Book } from "./book.ts";

/** A line of a text with the sign that stands before it. */
export interface Warned {
  alarm: boolean;
  says: string;
}

const SIGN = /^(! |\? | {2}or )/;

/** The dangers in a line each, then every warning in full; alarms apart from what is said for information. */
export function warnedOf({ forecast, voice }: Book): { dangers: string[]; all: Warned[] } {
  const plain = (line: string): string => {
    const text = line.replace(SIGN, (sign) => (sign.trim() === "or" ? "Or: " : ""));
    return text.trim();
  };
  return {
    dangers: dangerLines(forecast, voice).map(plain),
    all: warningLines(forecast, voice).map((line) => ({ alarm: SIGN.test(line), says: plain(line) })),
  };
}
