import type { CampForecast } from "../camp/camp.ts";
import type { ActResult, CampResult, LearnedResult, LookResult } from "../camp/campResult.ts";
import type { Band } from "../forecast/result.ts";
import { cautionLines } from "./closingText.ts";
import { asText } from "./forecastText.ts";
import { gainHours, gainIce, NOTHING } from "./gainWords.ts";
import { cut, hanging } from "./lines.ts";
import { type TextOptions, type Voice, voiceFor } from "./voice.ts";
import { durationWords, fromWords, hasNoIce, momentWords, nameWords, printable, spanWords } from "./words.ts";

/** A look more likely wrong than right is called odd. */
const odd_frac = 0.5;
/** Fewer members of equal weight than this leave the ends of a range to chance. */
const few = 20;

/** Width of a range in hours; the return bounds what lies past it. */
export function width_h({ p10, p90 }: Band, length_h: number): number {
  return Math.max(0, (p90 ?? length_h) - (p10 ?? length_h));
}

/** "½" for "1/2": as it is drawn on the log's boxes. */
const levelWords: Readonly<Record<string, string>> = { "3/4": "¾", "1/2": "½", "1/4": "¼" };

/** "saw ice at ½", "air read 38 F", "poured off 1 gal". */
export function lookWords({ of, saw }: LookResult): string {
  if (of === "air") return `air read ${printable(saw)}`;
  return of === "water" ? `poured off ${printable(saw)}` : `saw ice at ${levelWords[saw] ?? saw}`;
}

/** What a cooler's looks did to its ice, in one sentence. */
export function changedWords(
  learned: LearnedResult,
  { clock, middle }: Pick<Voice, "clock" | "middle">,
): string {
  const name = nameWords([learned.cooler]);
  const span = spanWords(learned.iceOut_h, clock, middle);
  if (learned.nLooks === 0) return `${name}: nobody looked inside; its ice lasts ${span}`;
  if (hasNoIce(learned.iceOut_h)) return `${name} has no water ice`;
  const [was, is] = [learned.iceOutBefore_h, learned.iceOut_h];
  const looks = learned.nLooks === 1 ? "this look" : `the ${learned.nLooks} looks`;
  const moved = movedWords(was, is);
  const before = spanWords(was, clock, middle);
  return before === span
    ? `${name}: its ice lasts ${span}, as before ${looks}`
    : `${name}: its ice lasts ${span}${moved}; before ${looks}: ${before}`;
}

function movedWords(was: Band, is: Band): string {
  if (was.p50 === null || is.p50 === null) return "";
  const hours = Math.round(is.p50 - was.p50);
  if (hours === 0) return "";
  return `, ${durationWords(Math.abs(hours))} ${hours > 0 ? "more" : "less"}`;
}

/** "Do now: empty bar into galley: +9 h for the ice, 5 to 12." or that nothing needs doing. */
export function oneThingWords({ now, needed, others }: CampResult, { units }: Pick<Voice, "units">): string {
  if (needed === null) return "What to do now was not tried.";
  if (now !== null) return `Do now: ${actSentence(now, { units })}`;
  if (needed)
    return "Nothing that could be done now gains anything that can be told; eat in the order below.";
  return others.length === 0
    ? "Nothing needs doing now."
    : `Nothing needs doing now; what would still gain: ${actSentence(others[0]!, { units })}`;
}

/** "Empty bar into galley, raw food lowest. It gains, ice: +9 h, 5 to 12." */
export const actSentence = (act: ActResult, { units }: Pick<Voice, "units">): string =>
  `${printable(act.does)}. ${gainSentence(act, units)}`;

/** Coolers of which the reckoning knows nothing any more. */
export const goneWords = ({ unreckoned }: Pick<CampResult, "unreckoned">): string[] =>
  unreckoned.map((name) => `${nameWords([name])} was swamped or lost: what is told of its ice holds no more`);

/** Food first, then warm hours, then ice: what is gained, with its range. */
function gainSentence({ gain }: ActResult, units: TextOptions["units"]): string {
  const parts = [
    ["cold food", gainHours(gain.food_h)],
    ["warm time less", gainHours(gain.warm_h)],
    ["ice", gainHours(gain.ice_h)],
    ["ice kept", gainIce(gain.ice_kg, units)],
  ].filter(([, said]) => said !== NOTHING);
  if (parts.length === 0) return `It gains ${NOTHING}.`;
  return `It gains, ${parts.map(([what, said]) => `${what}: ${said}`).join("; ")}.`;
}

/** "Odd: …" for each look that is more likely wrong than right. */
export function oddWords(looks: readonly LookResult[], voice: Pick<Voice, "clock">): string[] {
  return looks
    .filter(({ wrong_frac }) => wrong_frac > odd_frac)
    .map(
      (look) =>
        `Odd: ${momentWords(look.at_h, voice.clock)}, ${nameWords([look.cooler])} ${lookWords(look)}, which hardly any run of the model explains; it counts little. Look again, or withdraw it`,
    );
}

export function doubtWords(learned: readonly LearnedResult[]): string[] {
  return learned
    .filter(({ nLooks, members }) => nLooks > 0 && members < few)
    .map(
      ({ cooler }) => `${nameWords([cooler])}: few runs fit all that was seen; its range may be too narrow`,
    );
}

function eatLines({ eatOrder }: CampResult, voice: Voice): string[] {
  if (eatOrder.length === 0) return ["No perishable food is left in the coolers."];
  return [
    voice.paint.strong("Eat in this order"),
    ...eatOrder.flatMap(({ name, cooler, overLimit_h, verdict }, i) => {
      const when =
        overLimit_h.p10 === null
          ? "under its limit until it is eaten, nine times in ten"
          : fromWords(overLimit_h, voice.clock, voice.middle);
      const head = `${String(i + 1).padStart(2)}. `;
      return hanging(
        head,
        `${nameWords([name])} (${nameWords([cooler])}): ${verdict.toUpperCase()}; over its limit: ${when}`,
        voice.width,
      );
    }),
  ];
}

function headLines({ told, camp }: CampForecast, voice: Voice): string[] {
  const when = momentWords(Math.min(camp.now_h, voice.clock.length_h), voice.clock);
  const withdrawn = camp.nWithdrawn === 0 ? "" : `, ${camp.nWithdrawn} withdrawn`;
  return [
    voice.paint.strong(cut(`${printable(told.trip.title)}: in camp, ${when}`, voice.width)),
    ...hanging(
      "",
      `${camp.nEntries} entries in the log${withdrawn}. What was not logged is taken as planned.`,
      voice.width,
    ),
  ];
}

/**
 * What a log changes: the end of the ice of each cooler with what the looks did to it, the one thing to do now, odd
 * looks, and in which order to eat. Plain text within `width` columns.
 *
 * @throws DomainError for a width outside 60…200
 */
export function campText(whole: CampForecast, options: TextOptions): string {
  const { told, camp } = whole;
  const voice = voiceFor(told, options);
  const lines = (sentences: readonly string[]): string[] =>
    sentences.flatMap((sentence) => hanging("", `${sentence}.`, voice.width));
  return asText([
    headLines(whole, voice),
    hanging("", oneThingWords(camp, voice), voice.width, voice.paint.strong),
    lines(camp.learned.map((learned) => changedWords(learned, voice))),
    lines([...goneWords(camp), ...oddWords(camp.looks, voice), ...doubtWords(camp.learned)]),
    camp.now === null
      ? []
      : camp.others.flatMap((act) => hanging("Or: ", actSentence(act, voice), voice.width)),
    eatLines(camp, voice),
    cautionLines(voice),
  ]);
}
