/**
 * What must be said wherever dry ice is named; it is a caution, not a reckoning of the gas in a room.
 *
 * @source osha-carbon-dioxide
 */
export const dryIceCaution: { code: string; says: string; source: string } = {
  code: "dry-ice",
  says:
    "Dry ice turns to carbon dioxide, which suffocates without warning: never in a closed car, tent, cabin or boat, nor in an airtight box, which may burst. " +
    "Wear gloves, air the place before going in, keep children away. Work places are limited to 5000 ppm over eight hours (OSHA). " +
    "It freezes what it touches: no drinks, eggs, greens or medicines beside it.",
  source: "osha-carbon-dioxide",
};
