import type { Forecast } from "../forecast/types.ts";
import { asText, forecastText } from "./forecastText.ts";
import { planLines } from "./planLines.ts";
import { shoppingLines } from "./shoppingText.ts";
import { type TextOptions, voiceFor } from "./voice.ts";

/**
 * An ice plan as a person shops by it: the ice by purchase, with place, time and price, then the forecast of the trip so
 * planned, and between them where everything goes and what happens on the way. A forecast without a plan is told as a forecast.
 *
 * @throws DomainError for a width outside 60…200
 */
export function planText(forecast: Forecast, options: TextOptions): string {
  const voice = voiceFor(forecast, options);
  const { plan } = forecast.result;
  if (plan === undefined) return forecastText(forecast, options);
  const blocks = [shoppingLines(plan, forecast.trip, voice), planLines(plan, forecast.trip, voice)];
  return `${asText(blocks)}\n${forecastText(forecast, options)}`;
}
