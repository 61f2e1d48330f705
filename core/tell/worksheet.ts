import type { ExperimentResult } from "../camp/experimentResult.ts";
import type { UnitSystem } from "../quantity/units.ts";
import type { Paper } from "./book/flow.ts";
import { element } from "./book/html.ts";
import { bookStyle } from "./book/style.ts";
import { kitchenWords, pairsOf, repeatWords } from "./experimentText.ts";
import { escaped, printable } from "./words.ts";

export interface WorksheetOptions {
  units: UnitSystem;
  paper: Paper;
}

/**
 * A sheet of paper to run an experiment from: the question, slots for guesses, what to do, and blank boxes for every weighing
 * of every arm. It gives nothing of the forecast away but how often to repeat. A whole page that needs nothing else.
 */
export function worksheet(result: ExperimentResult, { units, paper }: WorksheetOptions): string {
  const title = printable(result.title);
  const hours = result.arms[0]!.weighings.map(({ after_h }) => after_h);
  const body = [
    element("h1", "", escaped(title)),
    result.question === null ? "" : element("p", "lead", escaped(result.question)),
    element("h2", "", "1. Guess, before anybody looks"),
    guessTable(result, hours.at(-1)!),
    element("h2", "", "2. Run"),
    ...stepsOf(result, units).map((step) =>
      element("p", "item box", `<span class="tick"></span><span>${escaped(step)}</span>`),
    ),
    element("h2", "", "3. Weigh"),
    weighTable(result, hours, runsOf(result)),
    element("h2", "", "4. See"),
    element(
      "p",
      "",
      escaped(
        "Write the weights under measured in the file and run the experiment again: the poster then shows guess, measurement and model beside each other.",
      ),
    ),
    ...pairsOf(result).map((pair) => element("p", "small", escaped(repeatWords(pair, result.oneBox)))),
  ];
  return `<!DOCTYPE html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width,initial-scale=1">
<title>${escaped(title)}: worksheet</title>
<style>${bookStyle(paper)}
.grid td{height:9mm}</style></head>
<body class="${paper.toLowerCase()}">
<section class="sheet"><header><b>${escaped(title)}</b><span>worksheet</span></header>${body.join("")}<footer><span>made before anybody looked</span><span>page 1 of 1</span></footer></section>
</body></html>
`;
}

const cells = (name: "td" | "th", texts: readonly string[]): string =>
  texts.map((text) => element(name, "", escaped(text))).join("");

function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const body = rows.map((row) => element("tr", "grid", cells("td", row))).join("");
  return `<table><thead><tr class="grid">${cells("th", head)}</tr></thead><tbody>${body}</tbody></table>`;
}

function guessTable({ arms }: ExperimentResult, last_h: number): string {
  const head = ["Who", ...arms.map(({ name }) => `${printable(name)}: ice left after ${last_h} h`)];
  return table(
    head,
    Array.from({ length: 4 }, () => head.map(() => "")),
  );
}

/** Runs for which there are boxes on the sheet; what takes more is written on a second one. */
const mostRuns = 5;

function runsOf(result: ExperimentResult): number {
  const wanted = pairsOf(result).map(({ repeats }) => repeats ?? mostRuns);
  return Math.min(mostRuns, Math.max(1, ...wanted));
}

function weighTable({ arms }: ExperimentResult, hours: readonly number[], runs: number): string {
  const rows = arms.flatMap(({ name }) =>
    Array.from({ length: runs }, (_, run) => [
      printable(name),
      ...(runs === 1 ? [] : [String(run + 1)]),
      "",
      ...hours.map(() => ""),
    ]),
  );
  return table(
    ["Arm", ...(runs === 1 ? [] : ["Run"]), "At the start", ...hours.map((h) => `After ${h} h`)],
    rows,
  );
}

function stepsOf({ arms, oneBox, scale_kg }: ExperimentResult, units: UnitSystem): string[] {
  const lots = arms.map(({ name, ice_kg }) => `${printable(name)} ${kitchenWords(ice_kg, units)}`).join(", ");
  return [
    `Let the box stand open in the room for some hours, and write down how warm the room is, now and at every weighing.`,
    `Weigh in the ice: ${lots}. The scale must show steps of ${kitchenWords(scale_kg, units)} or finer; weigh a dry bowl first and take it off.`,
    "Shut the lid, write down the time, and leave it shut.",
    ...(arms.some(({ cover }) => cover === "wet cloth")
      ? ["Wring the cloth out wet over the box at the start, and wet it again at every weighing."]
      : []),
    "At each time: lift the ice out, let the water run off for ten seconds, always the same way, weigh, put it back (and the water too, where it is kept), shut. Within a minute and a half.",
    oneBox
      ? "All arms in the same box, one after the other: dry it and let it come to the room again in between."
      : "A box for each arm, side by side, out of the sun; change boxes at every second run.",
  ];
}
