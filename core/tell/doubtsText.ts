import type { CoolerResult, Doubt } from "../forecast/result.ts";
import { hanging } from "./lines.ts";
import type { Voice } from "./voice.ts";
import { printable } from "./words.ts";

/** Smaller shares are not worth a word. */
const LEAST_frac = 0.05;
const MOST = 4;

/** The inputs that make up most of a cooler's range, largest first: those worth naming. */
export function mainDoubts({ doubts = [] }: Pick<CoolerResult, "doubts">, most: number = MOST): Doubt[] {
  return [...doubts]
    .filter(({ share_frac }) => share_frac >= LEAST_frac)
    .sort((a, b) => b.share_frac - a.share_frac)
    .slice(0, most);
}

/** What somebody could do about a doubt; null where it is not worth the while. */
export function adviceOf({ advice }: Doubt): string | null {
  const words = printable(advice);
  return words === "" || words.startsWith("nothing") ? null : words;
}

/** "Its range is mostly: walls 38 %, ice weight 20 %. What would narrow it: …". Nothing where no doubt is known. */
export function doubtLines(cooler: CoolerResult, voice: Voice): string[] {
  const main = mainDoubts(cooler);
  if (main.length === 0) return [];
  const shares = main.map(({ about, share_frac }) => `${printable(about)} ${Math.round(share_frac * 100)} %`);
  const advice = main.flatMap((doubt) => {
    const words = adviceOf(doubt);
    const narrows = Math.round(doubt.narrows_frac * 100);
    return words === null ? [] : [narrows < 1 ? words : `${words} (by ${narrows} %)`];
  });
  const narrow = advice.length === 0 ? "" : ` What would narrow it: ${advice.join("; ")}.`;
  return hanging("doubt: ", `Its range is mostly: ${shares.join(", ")}.${narrow}`, voice.width);
}
