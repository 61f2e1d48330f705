import { type ScaleLinear, scaleLinear } from "d3-scale";
import type { Forecast } from "../../forecast/types.ts";
import type { UnitSystem } from "../../quantity/units.ts";
import { type ColdSpent, coldSpent } from "../cold.ts";
import { roundToSum } from "../numbers.ts";
import { iceAmount, iceUnit, isMiddleCase } from "../voice.ts";
import { ONE_RUN } from "../words.ts";
import { box, checkOptions, fitted, line, type PictureOptions, picture, words, wrapped } from "./svg.ts";

/** Where the cold of one cooler went, as its picture needs it. */
export interface ColdStairData {
  cooler: string;
  middle: boolean;
  /** The facts that drive each part are words, so they come in both families of units. */
  spent: Readonly<Record<UnitSystem, ColdSpent>>;
}

/** What `coldStair` draws of a cooler. */
export function coldStairData(forecast: Forecast, index: number): ColdStairData {
  const { name } = forecast.result.coolers[index]!;
  const spent = {
    us: coldSpent(forecast, index, "us"),
    metric: coldSpent(forecast, index, "metric"),
  };
  return { cooler: name, middle: isMiddleCase(forecast.result), spent };
}

const ROW_PX = 38;
const BAR_PX = 18;
const EDGE = 14;
const VALUE_PX = 66;

interface Step {
  name: string;
  fact: string;
  /** In the shown unit a day, as shown. */
  value: number;
  /** Where the step begins and ends; a step of heat that came in goes left. */
  from: number;
  to: number;
}

/**
 * Where the cold goes: the top bar is what was used a day, told as ice; each step below begins where the last one ended,
 * and the last ends at nothing. Shown values add up to the shown total. Heat that came out steps right and is white.
 *
 * @throws DomainError for a width outside 320…1600 or an id that is no plain word
 */
export function coldStair(data: ColdStairData, options: PictureOptions): string {
  checkOptions(options);
  const { width, units } = options;
  const unit = `${iceUnit(units)} of ice a day`;
  const { steps, small, total } = stepsOf(data.spent[units], units);
  const left = Math.min(230, Math.round(width * 0.42));
  const ends = [0, total, ...steps.flatMap((step) => [step.from, step.to])];
  const x = scaleLinear([Math.min(...ends), Math.max(...ends, 0.1)], [left, width - EDGE - VALUE_PX]);
  const top = 50;
  const bottom = top + (steps.length + 1) * ROW_PX;
  const least = `below 0.05 ${iceUnit(units)}: ${small.join(", ")}.`;
  const closed = [...(small.length === 0 ? [] : [sentenceCase(least)]), ...closing(data, units)];
  const sums = closed.flatMap((text) => wrapped(text, width - 2 * EDGE, 12, 2));
  const title = fitted(`${data.cooler}: where the cold goes, a day`, width - 2 * EDGE, 15, true);
  const content = [
    words(title, EDGE, 24, { size: 15, bold: true }),
    words("Cold used a day", EDGE, top + 14, { size: 13, bold: true }),
    box(x(0), top, x(total), top + BAR_PX, "sure"),
    words(amount(total, units), x(total) + 7, top + 14, { size: 13, bold: true }),
    ...steps.map((step, i) => drawStep(step, x, top + (i + 1) * ROW_PX, left - EDGE - 8, units)),
    line(EDGE, bottom, width - EDGE, bottom, "ink", 1.5),
    words("Adds up to", EDGE, bottom + 20, { size: 13 }),
    words(`${shown(total)} ${unit}`, width - EDGE, bottom + 20, { size: 13, bold: true, anchor: "end" }),
    ...sums.map((text, i) => words(text, EDGE, bottom + 40 + i * 17, { fill: "ink2" })),
  ];
  const values = steps.map((step) => `${step.name} ${shown(step.value)}`).join(", ");
  const alt = `${data.cooler}: where the cold goes, in ${unit}. ${values}; adds up to ${shown(total)}.`;
  const height = bottom + 36 + sums.length * 17;
  return picture(options, height, { title: alt, desc: sums.join(" ") }, "", content.join(""));
}

/** One step with its name, the fact that drives it, and its value to the right. */
function drawStep(
  step: Step,
  x: ScaleLinear<number, number>,
  y: number,
  room: number,
  units: UnitSystem,
): string {
  // Bold letters are wider than those that the lines are broken for.
  const name = wrapped(sentenceCase(step.name), room / 1.12, 13, 2);
  const [low, high] = [x(Math.min(step.from, step.to)), x(Math.max(step.from, step.to))];
  return [
    line(x(step.from), y - ROW_PX + BAR_PX, x(step.from), y, "edge", 1, "1.5 2.5"),
    ...name.map((text, i) => words(text, EDGE, y + 10 + i * 15, { size: 13, bold: true })),
    // A name of two lines leaves no room for the fact.
    name.length > 1 ? "" : words(fitted(step.fact, room, 12), EDGE, y + 25, { fill: "ink2" }),
    box(low, y, high, y + BAR_PX, step.value < 0 ? "sheet" : "heatFill", "heat", 1.6),
    words(amount(step.value, units), high + 7, y + 14, { size: 13, bold: true }),
  ].join("");
}

function stepsOf(spent: ColdSpent, units: UnitSystem): { steps: Step[]; small: string[]; total: number } {
  const perDay = spent.parts.map((part) => iceAmount(part.ice_kg / (spent.span_days || 1), units));
  const rounded = roundToSum(perDay, 1);
  let at = rounded.total;
  const shownParts = spent.parts.map((part, i) => ({ ...part, value: rounded.parts[i]! }));
  const steps = shownParts
    .filter(({ value }) => value !== 0)
    .map((part) => {
      const { value } = part;
      const from = at;
      at = Math.round((at - value) * 10) / 10;
      return { name: part.name, fact: part.fact, value, from, to: at };
    });
  const small = shownParts.filter(({ value }) => value === 0).map(({ name }) => name);
  return { steps, small, total: rounded.total };
}

function closing({ spent: both, middle }: ColdStairData, units: UnitSystem): string[] {
  const spent = both[units];
  const whole = roundToSum(
    spent.parts.map((part) => iceAmount(part.ice_kg, units)),
    1,
  );
  const all = shown(whole.total);
  if (spent.span_days === 0) return ["No ice in this cooler, so no cold was used."];
  const days = shown(Math.round(spent.span_days * 10) / 10);
  const until = spent.isGone ? "till it is gone" : "to the return";
  const per = (kg: number): string =>
    `${shown(Math.round(iceAmount(kg / spent.span_days, units) * 10) / 10)} ${iceUnit(units)}`;
  const within = [
    ...(spent.sunWithin_kg === 0 ? [] : [`the sun ${per(spent.sunWithin_kg)}`]),
    ...(spent.dryIceGasWithin_kg === 0 ? [] : [`dry-ice gas ${per(spent.dryIceGasWithin_kg)}`]),
  ];
  const lines = [`${all} ${iceUnit(units)} of ice in ${days} days, ${until}.`];
  if (within.length > 0) lines.push(`Within it, a day: ${within.join(", ")}.`);
  return [...lines, middle ? `${ONE_RUN}.` : "The likely case, without a range."];
}

function amount(value: number, units: UnitSystem): string {
  return `${shown(value)} ${iceUnit(units)}`;
}

function shown(value: number): string {
  return value.toFixed(1).replace("-", "−");
}

function sentenceCase(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
