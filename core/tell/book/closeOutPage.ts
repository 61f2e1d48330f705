import { cautionLines } from "../closingText.ts";
import { isShown } from "../foodText.ts";
import { momentWords, nameWords, printable } from "../words.ts";
import { type Book, numberOf } from "./book.ts";
import { heading, list, type Piece, paragraph, type Table } from "./flow.ts";
import { blank, sentence } from "./html.ts";
import { pages, type Sheet } from "./page.ts";
import { warnedOf } from "./warned.ts";

/** Food eaten so late is worth a look before home. */
const LAST_h = 30;

/** How a cooler is cleaned after a trip; `text` cites the strength. */
export interface Wash {
  text: string;
  source: string;
}

/**
 * Strength and order of the wash: soap, rinse, dry, then a scant teaspoon of unscented bleach in a quart of cool water.
 *
 * @source wsu-fsm-240
 */
const wash: Wash = {
  text: "Then a scant teaspoon (5 mL) of unscented household bleach in a quart (1 L) of cool water, by cloth or spray on every inside face (Washington State University Extension, Food Safety in a Minute 240). The bottle's own label comes first; never mix bleach with anything but water.",
  source: "wsu-fsm-240",
};

/** The last day and home: what to eat first and bin, how to wash, and what was learnt. */
export function closeOutPage(book: Book): Sheet[] {
  const { options } = book;
  const { paper } = options;
  const pieces: Piece[] = [
    heading("Eat first, and what goes in the bin"),
    ...list(lastFood(book), paper, "box"),
    heading("Clean each cooler"),
    ...list(
      [
        "Melt and drain what ice is left, where the place allows it. Water that raw juice ran into goes where waste water goes.",
        "Wash walls, lid, gasket and drain plug with hot water and soap; rinse with clean water; dry with a clean cloth.",
        wash.text,
        "Leave it to dry in the air with lid and drain open, a day or more (common practice); store it with the lid ajar.",
      ],
      paper,
      "box",
    ),
    heading("What did we learn"),
    debriefTable(book),
    ...linesToWrite(["Never opened, or too much of", "Ran out of", "Next time"]),
  ];
  return pages("Close-out", "Last day and home", pieces, book);
}

function lastFood({ forecast, voice }: Book): string[] {
  const { food, trip } = forecast.result;
  const shown = food.filter(isShown);
  const lost = shown.filter(({ verdict }) => verdict === "discard").map(({ name }) => name);
  const late = shown
    .filter(
      ({ verdict, eaten_h, perishable }) =>
        verdict !== "discard" && perishable && (eaten_h === null || eaten_h > trip.hours - LAST_h),
    )
    .map(({ name }) => name);
  return [
    ...(late.length === 0 ? [] : [`Eat first on the last day: ${nameWords(late, 12)}.`]),
    ...(lost.length === 0 ? [] : [`In the bin as planned here: ${nameWords(lost, 12)}.`]),
    "In the bin: whatever is over its warm time, was touched by raw juice, lay wet in a torn package, or nobody can tell the history of.",
    `Perishable food that comes home is measured before it goes into the refrigerator (${momentWords(trip.hours, voice.clock)}); above the limit its warm time goes on.`,
  ];
}

function debriefTable(book: Book): Table {
  return {
    columns: [
      { head: "Cooler", wide_frac: 0.24, kind: "strong" },
      { head: "Ice left at home", wide_frac: 0.2 },
      { head: "Gone when", wide_frac: 0.2 },
      { head: "Binned", wide_frac: 0.36 },
    ],
    rows: book.forecast.result.coolers.map(({ name }, i) => ({
      cells: [`${numberOf(book, i)} ${printable(name)}`, "", "", ""],
      least_cm: 0.8,
      kind: "grid",
    })),
  };
}

function linesToWrite(heads: readonly string[]): Piece[] {
  return heads.map((head) => ({
    html: `<p>${head}: ${blank(18.6 - 1 - head.length * 0.19)}</p>`,
    tall_cm: 0.9,
  }));
}

/** Every warning in full, what was assumed to be minded, and the cautions that always hold. */
export function cautionsPage(book: Book): Sheet[] {
  const { options, voice } = book;
  const { all } = warnedOf(book);
  const always = [
    ...cautionLines(voice).map((line) => line.replace(/^! /, "")),
    "Medicines that need cold are not planned here: ask a pharmacist or the maker what they need.",
    "Lift with two, close to the body, and not on wet ground; hands, backs and feet are hurt by coolers more often than anything in them (common practice).",
    "Children do not climb into a cooler, and none is left with its lid latched where they play (common practice).",
  ];
  // On paper nobody writes a line into the file: what it would be stands in the terminal.
  const told = all.map(({ alarm, says }) => ({
    alarm,
    says: sentence(says.replace(/ [^.]*`[^`]*`[^.]*\.?$/, "")),
  }));
  const alarms = told.filter(({ alarm }) => alarm).map(({ says }) => says);
  const notes = told.filter(({ alarm }) => !alarm).map(({ says }) => says);
  const pieces: Piece[] = [
    ...(alarms.length === 0 ? [] : [heading("Warnings of this plan"), ...list(alarms, options.paper)]),
    ...(notes.length === 0 ? [] : [heading("Worth knowing"), ...list(notes, options.paper)]),
    heading("Always"),
    ...list(always, options.paper),
    paragraph(
      `Reckoned for one trip as it was written, ${printable(options.made)}. What changed since is not in it.`,
      options.paper,
    ),
  ];
  return pages("Cautions", "Cautions", pieces, book);
}
