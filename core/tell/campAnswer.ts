import type { CampForecast } from "../camp/camp.ts";
import type { ActResult, CampResult, EatNext, LearnedResult } from "../camp/campResult.ts";
import type { SaidEntry } from "../camp/logFile.ts";
import type { Band } from "../forecast/result.ts";
import type { UnitSystem } from "../quantity/units.ts";
import type { Verdict } from "../safety/verdict.ts";
import { actSentence, changedWords, doubtWords, goneWords, oddWords, oneThingWords } from "./campText.ts";
import { lookLadder } from "./pictures/lookLadder.ts";
import { type Voice, voiceFor } from "./voice.ts";
import { durationWords, fromWords, hasNoIce, nameWords, printable, spanWords } from "./words.ts";

/** A food that is still aboard, in the order in which to eat. */
export interface EatRow {
  name: string;
  cooler: string;
  verdict: Verdict;
  /** "over its limit: …" */
  when: string;
  rule: string;
  why: string;
}

/** The end of the ice of each cooler as it was told, to tell the next answer against. */
export type ToldIce = readonly { cooler: string; iceOut_h: Band }[];

/** What is different now in one cooler. */
interface CoolerAnswer {
  cooler: string;
  /** One sentence. */
  says: string;
  /** How its range narrowed, look by look, as an SVG; null: nobody looked into it. */
  picture: string | null;
}

/** What a log changes, in words for a screen. Plain data: it is kept and sent. */
export interface CampAnswer {
  coolers: readonly CoolerAnswer[];
  /** The one thing to do now, or that none is needed. */
  now: string;
  /** Whether `now` must be done, for food or the ice that it needs. */
  isAct: boolean;
  /** What the log gets once it was done; empty: it is not done at once. */
  nowLogs: readonly SaidEntry[];
  /** Other acts that gain, in sentences. */
  acts: readonly string[];
  /** Odd looks, lost coolers, thin ranges. */
  doubts: readonly string[];
  eat: readonly EatRow[];
  told: ToldIce;
}

export interface AnswerOptions {
  units: UnitSystem;
  /** Of the picture, px. */
  width: number;
  /** What was told before; null: nothing was. */
  before: ToldIce | null;
}

/** Hours below which two ends of the ice are told as one. */
const same_h = 1;

function sinceWords(learned: LearnedResult, before: ToldIce | null, voice: Voice): string {
  const was = before?.find(({ cooler }) => cooler === learned.cooler)?.iceOut_h;
  const is = learned.iceOut_h;
  if (was === undefined || hasNoIce(is)) return `${changedWords(learned, voice)}.`;
  const name = nameWords([learned.cooler]);
  const span = spanWords(is, voice.clock, voice.middle);
  return `${name}: its ice lasts ${span}${shiftWords(was, is)}.`;
}

/** ", 5 h less than told before" */
function shiftWords(was: Band, is: Band): string {
  if (was.p50 === null && is.p50 === null) return ", as told before";
  if (was.p50 === null) return ", sooner than told before";
  if (is.p50 === null) return ", longer than told before";
  const hours = is.p50 - was.p50;
  if (Math.abs(hours) < same_h) return ", as told before";
  return `, ${durationWords(Math.abs(Math.round(hours)))} ${hours > 0 ? "more" : "less"} than told before`;
}

/** The same food as the result has it: its name, then the moment of its meal, tell it from others. */
function eatRow(
  { name, cooler, overLimit_h, eaten_h, verdict }: EatNext,
  whole: CampForecast,
  voice: Voice,
): EatRow {
  const food = whole.told.result.food.find((one) => one.name === name && one.eaten_h === eaten_h)!;
  const when =
    overLimit_h.p10 === null
      ? "under its limit until it is eaten, nine times in ten"
      : `over its limit: ${fromWords(overLimit_h, voice.clock, voice.middle)}`;
  return { name: printable(name), cooler: printable(cooler), verdict, when, rule: food.rule, why: food.why };
}

const firstAct = ({ now, others, needed }: CampResult): ActResult | null =>
  now ?? (needed === false ? (others[0] ?? null) : null);

/**
 * What a camp log changes, told cooler by cooler against what was told before. The same words as `campText`.
 *
 * @throws DomainError for a width outside 320…1600
 */
export function campAnswer(whole: CampForecast, { units, width, before }: AnswerOptions): CampAnswer {
  const { camp } = whole;
  const voice = voiceFor(whole.told, { units });
  const act = firstAct(camp);
  return {
    coolers: camp.learned.map((learned, i) => ({
      cooler: learned.cooler,
      says: sinceWords(learned, before, voice),
      picture: lookLadder(
        { ...whole, camp: { ...camp, learned: [learned] } },
        { width, units, id: `looks${i}` },
      ),
    })),
    now: oneThingWords(camp, voice),
    isAct: camp.now !== null,
    nowLogs: act?.logs ?? [],
    acts: camp.others.filter((one) => one !== act).map((one) => actSentence(one, voice)),
    doubts: [...goneWords(camp), ...oddWords(camp.looks, voice), ...doubtWords(camp.learned)].map(
      (said) => `${said}.`,
    ),
    eat: camp.eatOrder.map((one) => eatRow(one, whole, voice)),
    told: camp.learned.map(({ cooler, iceOut_h }) => ({ cooler, iceOut_h })),
  };
}
