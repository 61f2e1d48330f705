import type { Forecast } from "../forecast/types.ts";
import { coolerSentence } from "./coolerSentence.ts";
import { foodAnswer } from "./foodText.ts";
import { type TextOptions, voiceFor } from "./voice.ts";

/** A forecast in sentences, for a screen that opens with its answer. */
export interface Answer {
  /** Whether the food stays within its limit, and what goes first where not. */
  food: string;
  /** One sentence a cooler, in the trip's order. */
  coolers: string[];
}

/** The answer of a forecast, with its band where it has one. */
export function answerOf(forecast: Forecast, options: TextOptions): Answer {
  const voice = voiceFor(forecast, options);
  return {
    food: foodAnswer(forecast, voice),
    coolers: forecast.trip.coolers.map((_, i) => coolerSentence(forecast, i, voice)),
  };
}
