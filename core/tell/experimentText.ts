import type { Contrast, ExperimentResult } from "../camp/experimentResult.ts";
import type { Band } from "../forecast/result.ts";
import { requireFinite } from "../quantity/errors.ts";
import { formatIn } from "../quantity/show.ts";
import type { UnitSystem } from "../quantity/units.ts";
import { asText } from "./forecastText.ts";
import { cut, hanging, noPaint, type Paint } from "./lines.ts";
import type { TextOptions } from "./voice.ts";
import { printable } from "./words.ts";

/** Kitchen weights: grams, or ounces with one decimal. */
export function kitchenWords(mass_kg: number, units: UnitSystem): string {
  return units === "us" ? formatIn(mass_kg, "oz", 1) : formatIn(mass_kg, "g", 0);
}

/** "1240 g (980 to 1450)"; the unit once. */
export function kitchenBand({ p10, p50, p90 }: Band, units: UnitSystem): string {
  const bare = (kg: number | null): string => kitchenWords(kg ?? 0, units).split(" ")[0]!;
  return `${kitchenWords(p50 ?? 0, units)} (${bare(p10)} to ${bare(p90)})`;
}

const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;

/** The weighing at which a difference takes the fewest repeats to be seen; the latest of equals. */
function bestContrast(contrasts: readonly Contrast[], a: string, b: string): Contrast {
  const own = contrasts.filter((one) => one.a === a && one.b === b);
  const worth = (one: Contrast): number => Math.abs(one.thought_kg.p50 ?? 0) / one.noise_kg;
  return own.reduce((best, one) => (worth(one) >= worth(best) ? one : best));
}

/** Every pair of arms, once. */
export function pairsOf(result: ExperimentResult): Contrast[] {
  const names = result.arms.map(({ name }) => name);
  return names.flatMap((a, i) => names.slice(i + 1).map((b) => bestContrast(result.contrasts, a, b)));
}

/** Every pair of arms at the last weighing, which is what is guessed. */
export function lastPairs({ contrasts }: ExperimentResult): Contrast[] {
  const last_h = Math.max(...contrasts.map(({ after_h }) => after_h));
  return contrasts.filter(({ after_h }) => after_h === last_h);
}

/** Whether the model knows at all which arm keeps more. */
const spansZero = ({ p10, p90 }: Band): boolean => (p10 ?? 0) < 0 && (p90 ?? 0) > 0;

/** Whether a kitchen scale can tell two arms apart, and how often it takes; no number of the forecast is given away. */
export function repeatWords({ a, b, after_h, repeats, thought_kg }: Contrast, oneBox: boolean): string {
  const names = `${printable(a)} and ${printable(b)}`;
  const open = spansZero(thought_kg)
    ? " The model itself does not know which keeps more: this is worth trying."
    : "";
  const boxes = oneBox ? "" : " Two boxes of a kind differ too: change boxes at every second run.";
  if (repeats === null)
    return `A kitchen scale will not tell ${names} apart: the likely difference drowns in what one run differs from the next, even after twenty of each.${open}${boxes}`;
  const runs = repeats === 1 ? "one run of each is" : `${repeats} runs of each are`;
  return `To tell ${names} apart, ${runs} enough, weighed after ${after_h} h, if the likely difference is there.${open}${boxes}`;
}

/**
 * An experiment as a person reads it. Without `reveal` it says how to run it and how often, and keeps what the model thinks
 * to itself, so that a guess is a guess.
 *
 * @throws DomainError for a width outside 60…200
 */
export function experimentText(result: ExperimentResult, options: TextOptions & { reveal: boolean }): string {
  const width = requireFinite("width", options.width ?? 80, 60, 200);
  const paint = options.colour ?? noPaint;
  const { units, reveal } = options;
  const hidden =
    "Guess first: write down how much ice each will have left at the last weighing, and look then (guesses in the file, or --reveal).";
  return asText([
    [
      paint.strong(cut(printable(result.title), width)),
      ...(result.question === null ? [] : hanging("", printable(result.question), width)),
    ],
    pairsOf(result).flatMap((pair) => hanging("", repeatWords(pair, result.oneBox), width)),
    ...(reveal ? revealed(result, units, width, paint) : [hanging("", hidden, width)]),
    hanging(
      "",
      "Ice from a deep freezer sticks to wet skin: gloves. Wipe up what is spilled, and shut a box that a child could climb into (common practice).",
      width,
      paint.faint,
    ),
  ]);
}

function revealed(result: ExperimentResult, units: UnitSystem, width: number, paint: Paint): string[][] {
  const arms = result.arms.map(({ name, weighings, guesses }) => [
    paint.strong(cut(printable(name), width)),
    ...weighings.flatMap(({ after_h, thought_kg, measured_kg }) => {
      const seen = measured_kg.length === 0 ? "" : `; weighed ${kitchenWords(mean(measured_kg), units)}`;
      const place = measured_kg.length === 0 ? "" : `, ${placeWords(mean(measured_kg), thought_kg)}`;
      return hanging(
        `  ${String(after_h).padStart(3)} h  `,
        `thought ${kitchenBand(thought_kg, units)}${seen}${place}`,
        width,
      );
    }),
    ...guesses.flatMap(({ who, ice_kg }) =>
      hanging("  guess  ", `${printable(who)}: ${kitchenWords(ice_kg, units)}`, width),
    ),
  ]);
  const pairs = lastPairs(result).flatMap((pair) =>
    hanging("", differenceWords(pair, units), width, paint.strong),
  );
  return [...arms, pairs];
}

const placeWords = (measured_kg: number, { p10, p90 }: Band): string =>
  measured_kg < (p10 ?? 0)
    ? "less than in nine of ten runs"
    : measured_kg > (p90 ?? 0)
      ? "more than in nine of ten runs"
      : "as thought";

/** "After 36 h block has 230 g more ice than cubes (…)"; and what was weighed. */
export function differenceWords(pair: Contrast, units: UnitSystem): string {
  const { after_h, thought_kg, measured_kg, noise_kg, runs } = pair;
  const [a, b] = [printable(pair.a), printable(pair.b)];
  const likely = thought_kg.p50 ?? 0;
  const thought = `After ${after_h} h ${a} less ${b}: thought ${kitchenBand(thought_kg, units)}`;
  if (measured_kg === null) return `${thought}.`;
  const told =
    Math.abs(measured_kg) < (2 * noise_kg) / Math.sqrt(runs)
      ? "no more than runs of one kind may differ, so not told apart yet"
      : measured_kg * likely > 0
        ? "more than chance, and to the side that was thought"
        : "more than chance, and to the other side than was thought";
  return `${thought}; weighed ${kitchenWords(measured_kg, units)}, ${told}.`;
}
