import { group } from "d3-array";
import type { AssumedResult } from "../forecast/result.ts";
import type { Forecast } from "../forecast/types.ts";
import { massWords } from "../quantity/show.ts";
import { cut, hanging } from "./lines.ts";
import type { Voice } from "./voice.ts";
import { durationWords, printable } from "./words.ts";

/** What was assumed, the one that moves the end of the ice most first; those without an effect keep their order. */
function byEffect(assumed: readonly AssumedResult[]): AssumedResult[] {
  return [...assumed].sort((a, b) => Math.abs(b.effect_h ?? 0) - Math.abs(a.effect_h ?? 0));
}

export function assumedLines(assumed: readonly AssumedResult[], nShown: number, voice: Voice): string[] {
  if (assumed.length === 0) return [];
  const count = assumed.length === 1 ? "1 thing" : `${assumed.length} things`;
  const shown = byEffect(assumed).slice(0, nShown);
  const moved = shown.some((one) => one.effect_h) ? "; what moves the end of the ice most comes first" : "";
  const lines = hanging("", `We assumed ${count}${moved}:`, voice.width, voice.paint.strong);
  for (const one of shown) {
    const effect = one.effect_h ? `, moves it ${effectWords(Math.abs(one.effect_h))}` : "";
    const text = `${cut(printable(one.path), 120)}: ${cut(printable(one.value), 120)}${effect} – ${printable(one.why)}`;
    lines.push(...hanging("  ", text, voice.width));
  }
  const more = assumed.length - shown.length;
  if (more > 0) lines.push(`  and ${more} more: \`coldstow check\` lists them all`);
  return lines;
}

/** To the hour: more would claim what nobody knows. */
function effectWords(hours: number): string {
  return hours < 0.95 ? "less than 1 h" : durationWords(Math.round(hours));
}

/** Each warning once, with all the places it holds for. */
export function warningLines({ result }: Forecast, voice: Voice): string[] {
  return [...group(result.warnings, (warning) => warning.says).values()].flatMap((same) => {
    const paths = same.map((warning) => cut(printable(warning.path), 60)).filter(Boolean);
    const where = paths.length === 0 ? "" : ` (${paths.join(", ")})`;
    return hanging("! ", printable(same[0]!.says) + where, voice.width, voice.paint.warn);
  });
}

/** What holds whatever was reckoned. Dry ice and too heavy coolers are warnings of the result, and told there. */
export function cautionLines(forecast: Forecast, voice: Voice): string[] {
  const cautions = [
    ...liftCautions(forecast, voice),
    "This is reckoned, not measured. Local rules and the orders of the agency in charge come first. A thermometer, a look or a smell may make a verdict stricter, never milder; doubtful food goes in the bin.",
  ];
  return cautions.flatMap((text) => hanging("! ", text, voice.width));
}

/**
 * The load constant of the revised NIOSH equation, the most that it ever recommends for one person.
 *
 * @source niosh-94-110
 */
const ONE_PERSON_KG = 23;

function liftCautions({ result }: Forecast, voice: Voice): string[] {
  const warned = new Set(result.warnings.filter(({ code }) => code === "heavy").map(({ path }) => path));
  const heavy = result.coolers.filter(
    ({ packedWeight_kg }, i) => packedWeight_kg > ONE_PERSON_KG && !warned.has(`coolers[${i}]`),
  );
  if (heavy.length === 0) return [];
  const names = heavy.map(({ name }) => cut(printable(name), 40)).join(", ");
  const most = massWords(ONE_PERSON_KG, voice.units);
  return [
    `More than one person should lift ${names}: packed over ${most}, the most for one (NIOSH lifting equation).`,
  ];
}
