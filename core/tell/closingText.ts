import { hanging } from "./lines.ts";
import type { Voice } from "./voice.ts";

/** What holds whatever was reckoned. */
export function cautionLines(voice: Voice): string[] {
  const text =
    "This is reckoned, not measured. Local rules and the orders of the agency in charge come first. A thermometer, a look or a smell may make a verdict stricter, never milder; doubtful food goes in the bin.";
  return hanging("! ", text, voice.width);
}
