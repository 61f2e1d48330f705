import type { Forecast } from "../forecast/types.ts";
import { answerLines, asText, detailBlocks, forecastText } from "./forecastText.ts";
import { fileLines, placeLines, wayLines } from "./planLines.ts";
import { shoppingLines } from "./shoppingText.ts";
import { type TextOptions, voiceFor } from "./voice.ts";

/**
 * A plan as a person reads it in a terminal: the answer first (the food, each cooler, dangers), then what to do: the ice
 * by purchase, what happens on the way, where everything goes, and the files. Below a rule stands what the forecast of
 * the trip so planned has to tell. A forecast without a plan is told as a forecast.
 *
 * @throws DomainError for a width outside 60…200
 */
export function planText(forecast: Forecast, options: TextOptions): string {
  const voice = voiceFor(forecast, options);
  const { plan } = forecast.result;
  if (plan === undefined) return forecastText(forecast, options);
  return asText([
    answerLines(forecast, voice),
    shoppingLines(plan, forecast.trip, voice),
    wayLines(plan, forecast.trip, voice),
    placeLines(plan, voice),
    fileLines(plan, voice),
    ...detailBlocks(forecast, voice),
  ]);
}
