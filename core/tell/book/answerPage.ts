import { coolerSentence } from "../coolerSentence.ts";
import { foodAnswer } from "../foodText.ts";
import { coolerStrip } from "../pictures/coolerStrip.ts";
import { coolerStripData } from "../pictures/coolerStripData.ts";
import { otherwiseWords } from "../planLines.ts";
import { durationWords, escaped, momentWords, ONE_RUN, printable } from "../words.ts";
import { type Book, momentIn } from "./book.ts";
import { type Block, drawing, heading, list, type Piece, paragraph } from "./flow.ts";
import { element, sentence } from "./html.ts";
import { fewestSheets, pages, type Sheet } from "./page.ts";
import { warnedOf } from "./warned.ts";

/** What asks for a person at most, so that it is read. */
const MOST_NEEDS = 3;
/** Rather so small than on a sheet of its own: its words are 8 pt then. */
const LEAST_STRIP_frac = 0.86;

/** The answer in a sentence, the trip in a picture, what needs somebody, and each cooler in a sentence. */
export function answerPage(book: Book): Sheet[] {
  return fewestSheets([1, 0.93, LEAST_STRIP_frac].map((share_frac) => answerWith(book, share_frac)));
}

function answerWith(book: Book, share_frac: number): Sheet[] {
  const { forecast, voice, options, plan } = book;
  const { paper, pictures } = options;
  const needs = needsOf(book);
  const ways = plan.waysOut.map(
    ({ says, holds }) => `${printable(says)} ${holds ? "That holds." : "That does not hold either."}`,
  );
  const pieces: Piece[] = [
    paragraph(tripWords(book), paper),
    paragraph(doubtWords(book), paper),
    drawing(pictures.strip ?? stripOf(book), paper, share_frac, LEAST_STRIP_frac / share_frac),
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

const stripOf = ({ forecast, options }: Book): string =>
  coolerStrip(coolerStripData(forecast), { width: 680, units: options.units, id: "strip" });

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

/** The most urgent first: dangers, food that is ruined, ice to fetch; then other alarms while there is room. */
function needsOf(book: Book): string[] {
  const { dangers, all } = warnedOf(book);
  const alarms = all.filter(({ alarm }) => alarm).map(({ says }) => says);
  const ruined = alarms.filter((says) => says.startsWith("Would freeze"));
  const rest = dangers.length === 0 ? alarms.filter((says) => !ruined.includes(says)) : [];
  return [
    ...dangers.map((text) => text.replace("See below.", "See Cautions, at the end.")),
    ...ruined.map((says) => `${says}. Keep what is below freezing off, a folded towel between.`),
    ...runNeed(book),
    ...rest,
  ]
    .slice(0, MOST_NEEDS)
    .map(sentence);
}

/** Every ice run in one line, by when to leave. */
function runNeed({ plan, voice }: Book): string[] {
  const runs = plan.iceRuns;
  if (runs.length === 0) return [];
  const leave = runs.map(
    (run) =>
      `${momentIn(run.leaveBy, voice.clock)} (${run.pieces} ${run.pieces === 1 ? "piece" : "pieces"} for ${printable(run.into)})`,
  );
  const head = runs.length === 1 ? "Fetch ice: leave by" : `Fetch ice ${runs.length} times: leave by`;
  return [`${head} ${leave.join(", ")}. What to do where there is none: see Ice runs and merges.`];
}

function otherwisePieces({ plan, options }: Book): Piece[] {
  if (plan.otherwise.length === 0) return [];
  const says = plan.otherwise.map((one) => `${sentence(otherwiseWords(one))}.`);
  return [heading("What was not taken"), ...list(says, options.paper)];
}
