import type { IcePiece, PlanResult } from "../forecast/result.ts";
import type { Forecast } from "../forecast/types.ts";
import { massWords } from "../quantity/show.ts";
import type { Trip } from "../trip/types.ts";
import { asText, forecastText } from "./forecastText.ts";
import { hanging } from "./lines.ts";
import { pieceWords } from "./pieces.ts";
import { type TextOptions, type Voice, voiceFor } from "./voice.ts";
import { printable } from "./words.ts";

/**
 * An ice plan as a person shops by it: the ice in pieces with place, weight and price, then the forecast of the trip so
 * planned. A forecast without a plan is told as a forecast.
 *
 * @throws DomainError for a width outside 60…200
 */
export function planText(forecast: Forecast, options: TextOptions): string {
  const voice = voiceFor(forecast, options);
  const plan = forecast.result.plan;
  if (plan === undefined) return forecastText(forecast, options);
  return `${asText([iceLines(plan, forecast.trip, voice)])}\n${forecastText(forecast, options)}`;
}

function iceLines(plan: PlanResult, trip: Trip, voice: Voice): string[] {
  if (plan.ice.length === 0) return ["No ice to get."];
  const pieces = plan.ice.reduce((sum, piece) => sum + piece.pieces, 0);
  const price = plan.cost === null ? "price not given" : `costs ${plan.cost.toFixed(2)}`;
  const total = `Ice to get: ${pieces} ${pieces === 1 ? "piece" : "pieces"}, ${massWords(plan.weight_kg, voice.units)}, ${price}`;
  const lines = [voice.paint.strong(total), ...plan.ice.flatMap((piece) => pieceLines(piece, trip, voice))];
  if (plan.file !== null)
    lines.push(...hanging("", `The planned trip: ${printable(plan.file)}`, voice.width));
  return lines;
}

function pieceLines(piece: IcePiece, trip: Trip, voice: Voice): string[] {
  const facts = [
    `into ${printable(piece.cooler)}`,
    piece.where === "" ? "" : `from ${printable(piece.where)}`,
    piece.by === "" ? "" : `by ${printable(piece.by)}`,
    massWords(piece.weight_kg, voice.units),
    piece.price === null ? "price not given" : piece.price.toFixed(2),
  ];
  const text = `${pieceWords(piece.pieces, eachWords(piece, trip, voice), piece.form)}: ${facts.filter(Boolean).join(", ")}`;
  return hanging("  ", text, voice.width);
}

/** What one piece is called where it is sold, as the trip file has it. */
function eachWords(piece: IcePiece, trip: Trip, voice: Voice): string {
  const sold = trip.supply.filter(
    (supply) => supply.form === piece.form && Math.abs(supply.each_kg - piece.each_kg) < 1e-6 * piece.each_kg,
  );
  const here = sold.find((supply) => supply.where === piece.where) ?? sold[0];
  return here?.each ?? massWords(piece.each_kg, voice.units);
}
