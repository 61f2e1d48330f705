import { coolerSentence } from "../coolerSentence.ts";
import { foodAnswer } from "../foodText.ts";
import { gainHours } from "../gainWords.ts";
import { durationWords, escaped, momentWords, ONE_RUN, printable } from "../words.ts";
import { type Book, momentIn } from "./book.ts";
import { type Block, drawing, heading, list, type Piece, paragraph } from "./flow.ts";
import { element, sentence } from "./html.ts";
import { pages, type Sheet } from "./page.ts";
import { warnedOf } from "./warned.ts";

/** What asks for a person at most, so that it is read. */
const MOST_NEEDS = 3;

/** The answer in a sentence, the trip in a picture, what needs somebody, and each cooler in a sentence. */
export function answerPage(book: Book): Sheet[] {
  const { forecast, voice, options, plan } = book;
  const { paper, pictures } = options;
  const needs = needsOf(book);
  const ways = plan.waysOut.map(
    ({ says, holds }) => `${printable(says)} ${holds ? "That holds." : "That does not hold either."}`,
  );
  const pieces: Piece[] = [
    paragraph(tripWords(book), paper),
    paragraph(doubtWords(book), paper),
    ...(pictures.strip === undefined ? [] : [drawing(pictures.strip, paper)]),
    ...(needs.length === 0
      ? []
      : [heading(needs.length === 1 ? "One thing needs you" : `${counted(needs.length)} things need you`)]),
    ...needs.map((text) => boxed(text, book)),
    ...(ways.length === 0 ? [] : [heading("Ways out that were tried"), ...list(ways, paper)]),
    heading("The coolers"),
    ...list(
      forecast.result.coolers.map((_, i) => sentence(coolerSentence(forecast, i, voice))),
      paper,
    ),
    ...otherwisePieces(book),
  ];
  return pages("Answer", foodAnswer(forecast, voice), pieces, book);
}

const counted = (count: number): string => (count === 2 ? "Two" : "Three");

function boxed(text: string, { options }: Book): Block {
  const { tall_cm } = paragraph(text, options.paper);
  return { html: element("p", "need", escaped(text)), tall_cm: tall_cm + 0.45 };
}

function tripWords({ forecast, voice }: Book): string {
  const { hours } = forecast.result.trip;
  const { adults, children, diets } = forecast.trip.party;
  const heads = [
    adults > 0 ? `${adults} ${adults === 1 ? "adult" : "adults"}` : "",
    children > 0 ? `${children} ${children === 1 ? "child" : "children"}` : "",
    ...Object.entries(diets).map(([diet, count]) => `${count} of them ${printable(diet)}`),
  ].filter((words) => words !== "");
  const span = `${momentWords(0, voice.clock)} to ${momentWords(hours, voice.clock)}, ${durationWords(hours)}`;
  return `${span}. ${heads.join(", ")}.`;
}

function doubtWords({ forecast, voice }: Book): string {
  if (voice.middle) return `${ONE_RUN}: a cooler may do a quarter better or worse.`;
  const sure = Math.round(forecast.trip.confidence_frac * 100);
  return `Planned to hold in ${sure} of 100 such trips. Where two ends are given, the truth lies between them 8 times in 10.`;
}

/** The most urgent first: dangers, then alarms that no danger tells of already. */
function needsOf(book: Book): string[] {
  const { dangers, all } = warnedOf(book);
  const alarms = all.filter(({ alarm }) => alarm).map(({ says }) => says);
  const runs = book.plan.iceRuns.map(
    (run) =>
      `Ice run ${momentIn(run.at, book.voice.clock)}: leave by ${momentIn(run.leaveBy, book.voice.clock)}. None to be had: ${printable(run.fallback)}`,
  );
  return [
    ...dangers.map((text) => text.replace("See below.", "See the last page.")),
    ...runs,
    ...(dangers.length === 0 ? alarms : []),
  ].slice(0, MOST_NEEDS);
}

function otherwisePieces({ plan, options }: Book): Piece[] {
  if (plan.otherwise.length === 0) return [];
  const says = plan.otherwise.map(({ says, foodGain_h, iceGain_h }) => {
    const gains = [
      ...(foodGain_h === null ? [] : [`food within its limit ${gainHours(foodGain_h)}`]),
      ...(iceGain_h === null ? [] : [`ice ${gainHours(iceGain_h)}`]),
    ];
    return `${printable(says)}${gains.length === 0 ? "" : ` (${gains.join("; ")})`}`;
  });
  return [heading("What was not taken"), ...list(says, options.paper)];
}
