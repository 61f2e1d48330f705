import { massWords } from "../../quantity/show.ts";
import { escaped, momentWords, nameWords, printable } from "../words.ts";
import { type Book, isUnused, numberOf, packedIn } from "./book.ts";
import { type Holds, holdsOf, isRawLowest, jobWords, tapeWords, wayLines } from "./coolerJob.ts";
import { blank, element, named } from "./html.ts";
import type { Sheet } from "./page.ts";

/** Two labels a sheet with a line to cut along: for the lid, and for the side with the words for a strip of tape. */
export function labelPages(book: Book): Sheet[] {
  return book.forecast.result.coolers.flatMap((_, i) => {
    const html = `${lidLabel(book, i)}<div class="cut"></div>${sideLabel(book, i)}`;
    return isUnused(book, i) ? [] : [{ about: `Labels ${numberOf(book, i)}`, html }];
  });
}

const KINDS: Readonly<Record<Holds, string>> = {
  raw: "RAW",
  ready: "READY TO EAT",
  both: "RAW in trays | and READY TO EAT",
  drinks: "DRINKS",
  nothing: "EMPTY AT DEPARTURE",
};
const RAW_LOWEST = "RAW below | READY TO EAT above";

/** The lid label of a cooler, to be read from two metres: whose it is, when it may be opened, raw or ready. */
export function lidLabel(book: Book, cooler: number): string {
  const { forecast, voice, plan } = book;
  const { name, sealedUntil_s } = forecast.trip.coolers[cooler]!;
  const { packedWeight_kg } = forecast.result.coolers[cooler]!;
  const lift = plan.lifts.find((one) => one.cooler === forecast.result.coolers[cooler]!.name);
  const weight_kg = lift?.weight_kg ?? packedWeight_kg;
  const ban =
    sealedUntil_s === null
      ? ""
      : element(
          "div",
          "ban",
          `DO NOT OPEN BEFORE<br>${escaped(momentWords(sealedUntil_s / 3600, voice.clock))}`,
        );
  const metric = massWords(weight_kg, "metric");
  const weight = voice.units === "us" ? `${massWords(weight_kg, "us")} (${metric})` : metric;
  return element(
    "div",
    "label lid",
    head(numberOf(book, cooler), name) +
      ban +
      kindHtml(holdsOf(book, cooler), isRawLowest(book, cooler)) +
      element(
        "div",
        "fact",
        `Packed weight <b>${escaped(weight)}</b>. Allergens: <b>${escaped(allergenWords(book, cooler))}</b>`,
      ) +
      element("div", "fact", `In charge: ${blank(5)} Carried by: ${blank(5)}`) +
      element("div", "first", `First opened: day ${blank(2.5)} time ${blank(2.5)} by ${blank(3)}`),
  );
}

/** Names and acts that the side of a cooler has room for. */
const SIDE_NAMES = 14;
const SIDE_ACTS = 4;

function sideLabel(book: Book, cooler: number): string {
  const food = packedIn(book, cooler).map(({ name }) => name);
  const acts = wayLines(book, cooler);
  const inside =
    food.length === 0 ? "" : element("div", "fact", `<b>Inside:</b> ${named(nameWords(food, SIDE_NAMES))}`);
  const way = acts
    .slice(0, SIDE_ACTS)
    .map((text) => element("div", "fact", escaped(text)))
    .join("");
  return element(
    "div",
    "label side",
    element("div", "tape", escaped(tapeWords(book, cooler))) +
      element("div", "fact", escaped(jobWords(book, cooler))) +
      inside +
      way +
      element("div", "first", "The large words are for a strip of tape, where no printer is."),
  );
}

function head(number: string, name: string): string {
  const size_pt = printable(name).length <= 9 ? 66 : printable(name).length <= 16 ? 46 : 30;
  return element(
    "div",
    "row",
    element("div", "number", escaped(number)) +
      `<div class="name" style="font-size:${size_pt}pt">${named(name)}</div>`,
  );
}

function kindHtml(holds: Holds, rawLowest: boolean): string {
  return element(
    "div",
    holds === "raw" || holds === "both" ? "kind double" : "kind",
    escaped(holds === "both" && rawLowest ? RAW_LOWEST : KINDS[holds]).replace(" | ", "<br>"),
  );
}

/** What its food contains; food that does not say counts as may contain. */
function allergenWords(book: Book, cooler: number): string {
  const food = packedIn(book, cooler);
  const known = [...new Set(food.flatMap(({ contains }) => contains ?? []))];
  const open = food.filter(({ contains }) => contains === null);
  const words = known.length === 0 ? [] : [known.join(", ")];
  if (open.length > 0) words.push(`not said for ${open.length} of ${food.length}: may contain any`);
  return words.length === 0 ? "none named" : words.join("; ");
}
