import type { IceTestResult } from "../camp/iceTestResult.ts";
import type { Spread } from "../matter/spread.ts";
import { requireFinite } from "../quantity/errors.ts";
import { formatIn, temperatureWords } from "../quantity/show.ts";
import type { UnitSystem } from "../quantity/units.ts";
import { asText } from "./forecastText.ts";
import { conductanceWords, narrowed_frac } from "./historyText.ts";
import { cut, hanging, noPaint, type Paint, paddedLeft } from "./lines.ts";
import type { TextOptions } from "./voice.ts";
import { printable } from "./words.ts";

/** As a bathroom scale tells it: one decimal. */
const weight = (mass_kg: number, units: UnitSystem): string =>
  formatIn(mass_kg, units === "us" ? "lb" : "kg", 1);

/** "2.7 kg (2.4 to 3.0)": the unit once. */
function weightBand({ p10, p50, p90 }: Spread, units: UnitSystem): string {
  const bare = (kg: number): string => weight(kg, units).split(" ")[0]!;
  return `${weight(p50, units)} (${bare(p10)} to ${bare(p90)})`;
}

/** The answer of an ice test in one sentence. */
export function iceTestAnswer(result: IceTestResult, units: UnitSystem): string {
  const { test, tells, weighings, loss_kg_per_day: loss } = result;
  const name = printable(test.cooler);
  if (weighings.length === 0) return `${name}: nothing is weighed yet. This is how to test it.`;
  if (!tells) return `${name}: too little to tell yet. What was weighed fits many coolers of its kind.`;
  return `${name} melts ${weightBand(loss, units)} of ice a day at ${temperatureWords(loss.at_C, units)}, shut, iced all through.`;
}

/** How it compares with its kind, and how much surer one is. */
function iceTestClass(result: IceTestResult): string {
  const { class_W_per_K: before, conductance_W_per_K: now } = result;
  const narrower = Math.round(100 * narrowed_frac(before, now));
  const percent = Math.round(100 * (result.better_frac ?? 0.5));
  const place =
    percent >= 50
      ? `about ${percent} in 100 coolers of its kind let in more heat`
      : `about ${100 - percent} in 100 coolers of its kind let in less heat`;
  return `Conductance ${conductanceWords(now)}; before the test ${conductanceWords(before)}, so the range is ${narrower} % narrower. ${place[0]!.toUpperCase()}${place.slice(1)}. Its body: ${bodyWords(result)}.`;
}

const bodyWords = ({ body_kJ_per_K: { p10, p50, p90 } }: IceTestResult): string =>
  `${p50.toFixed(1)} kJ/K (${p10.toFixed(1)} to ${p90.toFixed(1)})`;

/** Steps of the test, before anything was weighed. Usual practice, without a source. */
function iceTestSteps({ test, next }: IceTestResult, units: UnitSystem): string[] {
  const hours = next.map(({ after_h }) => after_h).sort((a, b) => a - b);
  const when =
    hours.length === 0 ? "once a day" : `after ${hours.map((h) => `${h} h`).join(", ")} by the clock`;
  return [
    "Let the empty cooler stand open in the room for a night, out of sun and draught, away from heaters. Put it where it may stay.",
    `Weigh the ice, ${weight(test.ice_kg, units)} of it, put it in, shut the lid, and write down the hour. Write down how warm the room is, morning and evening.`,
    `Weigh again ${when}: lift the ice out into a dry bag or tub, shake the water off, weigh, put ice and water back, shut. Be quick: a minute and a half.`,
    "Write each weight into the file under weighed. A lid that was left open, a meal's ice taken out, a move into the sun: write it down too, and begin anew.",
  ];
}

const CAUTIONS =
  "A cooler full of ice is heavy: two people, or weigh the ice in parts. Wet floors are slippery; ice from a deep freezer sticks to wet skin: gloves. Shut a box that a child could climb into (common practice).";

/** What to weigh next and what it gives; empty where nothing more is to be had. */
function nextWeighingWords({ next, weighings }: IceTestResult): string {
  if (next.length === 0)
    return weighings.length === 0 ? "" : "Another weighing would hardly narrow it: the test is done.";
  const [first] = next;
  const width = Math.round(100 * first!.width_frac);
  const more =
    next.length > 1
      ? ` With ${next
          .slice(1)
          .map(({ after_h }) => `${after_h} h`)
          .join(" and ")} as well, to ${Math.round(100 * next.at(-1)!.width_frac)} %.`
      : "";
  return `The next weighing that tells most: after ${first!.after_h} h. It narrows the range to about ${width} % of what it is.${more}`;
}

function weighingLines(
  { weighings }: IceTestResult,
  units: UnitSystem,
  width: number,
  paint: Paint,
): string[] {
  return weighings.flatMap(({ after_h, of, measured_kg, fitted_kg, residual_kg, isCounted }) => {
    const head = `  ${paddedLeft(String(Number(after_h.toFixed(1))), 5)} h  `;
    const what = of === "ice" ? "ice" : "water let out";
    const off = `${residual_kg < 0 ? "−" : "+"}${weight(Math.abs(residual_kg), units)}`;
    const says = `${what} ${weight(measured_kg, units)}; by the fit ${weight(fitted_kg, units)} (${off})${isCounted ? "" : "; left out"}`;
    return hanging(head, says, width, isCounted ? (text) => text : paint.warn);
  });
}

/**
 * An ice test as a person reads it: the answer first, then what was weighed beside the fit, what is odd, the place among its
 * kind, what to weigh next. Without a weighing: how to run it. Plain text within `width` columns.
 *
 * @throws DomainError for a width outside 60…200
 */
export function iceTestText(result: IceTestResult, options: TextOptions): string {
  const width = requireFinite("width", options.width ?? 80, 60, 200);
  const paint = options.colour ?? noPaint;
  const { units } = options;
  const { weighings, tells, odd, assumed } = result;
  const steps = iceTestSteps(result, units);
  return asText([
    [paint.strong(cut(printable(result.test.title), width))],
    hanging("", iceTestAnswer(result, units), width, paint.strong),
    ...(weighings.length === 0
      ? [steps.flatMap((step, i) => hanging(`${i + 1}. `, step, width))]
      : [weighingLines(result, units, width, paint)]),
    odd.flatMap(({ says }) => hanging("! ", says, width, paint.warn)),
    ...(tells ? [hanging("", iceTestClass(result), width)] : []),
    hanging("", nextWeighingWords(result), width),
    assumed.flatMap(({ path, value, why }) => hanging("assumed: ", `${path} ${value}; ${why}`, width)),
    hanging(
      "",
      `${CAUTIONS} Reckoned, not measured: the range holds eight times in ten where the room was as written.`,
      width,
      paint.faint,
    ),
  ]);
}
