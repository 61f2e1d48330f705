import { group } from "d3-array";
import type { ComparedTrip, CompareResult } from "../../whatif/types.ts";
import { iceLasts, pairWords, riskWords } from "../compareText.ts";
import { membersWords } from "../gainWords.ts";
import { nameWords } from "../words.ts";
import { disc, drawPanel, strokeOf } from "./comparePanel.ts";
import {
  box,
  checkOptions,
  fitted,
  line,
  type PictureOptions,
  picture,
  px,
  tag,
  words,
  wrapped,
} from "./svg.ts";
import { overlayFill, overlayTextures } from "./texture.ts";

const EDGE = 14;
const MOST_LETTERS = 4;
const CAUTION = "None of this is a promise; a thermometer and your eyes come first.";

/**
 * The ice of several trips laid over each other, a panel for each cooler that they have in common by name: likely lines
 * that differ in their strokes, ranges that differ in texture, a letter on each line, and below what each trip comes to.
 *
 * @throws DomainError for a width outside 320…1600 or an id that is no plain word
 */
export function compareBands(result: CompareResult, options: PictureOptions): string {
  checkOptions(options);
  const { width, id } = options;
  const trips = result.trips.slice(0, MOST_LETTERS);
  const letters = trips.map(({ letter }) => letter);
  const series = result.series.filter(({ letter }) => letters.includes(letter));
  const room = width - 2 * EDGE;
  const head = wrapped(membersWords(result.members, result.seed), room, 12, 3);
  let y = 36 + head.length * 16;
  const panels = [...group(series, ({ cooler }) => cooler)].map(([cooler, same]) => {
    const drawn = drawPanel(cooler, same, letters, options, y);
    y += drawn.height;
    return drawn.svg;
  });
  const rows = trips.map((trip, i) => {
    const drawn = drawTrip(trip, i, options, y);
    y += drawn.height;
    return drawn.svg;
  });
  const pairs = [...result.pairs.map(pairWords), CAUTION];
  const feet = pairs.flatMap((text) => wrapped(text, room, 12, 3));
  const title = `Ice of ${trips.length} trips, side by side`;
  const content = [
    words(title, EDGE, 20, { size: 15, bold: true }),
    ...head.map((text, i) => words(text, EDGE, 38 + i * 16, { fill: "ink2" })),
    ...panels,
    ...rows,
    ...feet.map((text, i) => words(text, EDGE, y + 12 + i * 16)),
  ];
  const desc = [
    ...trips.map((trip) => `${trip.letter}, ${trip.title}: ${tripWords(trip).join("; ")}.`),
    ...pairs,
  ];
  return picture(
    options,
    y + feet.length * 16 + 8,
    {
      title: `${title}: ${trips.map(({ letter, title: of }) => `${letter} ${of}`).join(", ")}.`,
      desc: desc.join(" "),
    },
    overlayTextures(id, trips.length),
    content.join(""),
  );
}

function tripWords(trip: ComparedTrip): string[] {
  return [
    riskWords(trip),
    ...trip.coolers.map(({ name, iceOut_h }) => `${nameWords([name])}: ${iceLasts(iceOut_h)}`),
  ];
}

/** The key and the answer in one: how its line is drawn, its title, what is at risk and how long its ice lasts. */
function drawTrip(
  trip: ComparedTrip,
  i: number,
  options: PictureOptions,
  y: number,
): { svg: string; height: number } {
  const { width, id } = options;
  const left = EDGE + 84;
  const room = width - EDGE - left;
  const said = tripWords(trip).flatMap((text) => wrapped(text, room, 12, 3));
  const svg = [
    line(EDGE, y, width - EDGE, y, "rule", 1),
    box(EDGE, y + 10, EDGE + 46, y + 26, overlayFill(i, id), "sure", 0.8),
    tag("path", { d: `M${EDGE},${px(y + 18)}h46`, fill: "none", ...strokeOf(i) }),
    disc(trip.letter, EDGE + 62, y + 18),
    words(fitted(trip.title, room, 13, true), left, y + 18, { size: 13, bold: true }),
    ...said.map((text, k) => words(text, left, y + 35 + k * 15, { fill: "ink2" })),
  ].join("");
  return { svg, height: Math.max(38, 28 + said.length * 15 + 6) };
}
