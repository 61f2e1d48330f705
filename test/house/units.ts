/** Endings that say the unit of a number. A name ends in one of these after an underscore; `/` is written `per`. */
export const unitEndings: readonly string[] = [
  ...["C", "K", "K_per_J", "per_K"],
  ...["s", "ms", "h", "min", "days", "per_h"],
  ...["m", "cm", "m2", "m3", "L", "px", "m_per_s", "m3_per_s"],
  ...[
    "kg",
    "g",
    "kg_per_s",
    "kg_per_m2",
    "kg_per_m2s",
    "kg_per_m3",
    "kg_per_L",
    "kg_per_kg",
    "kg_per_mol",
    "m2_per_kg",
    "m3_per_kg",
  ],
  ...["J", "kJ", "J_per_K", "kJ_per_K", "J_per_kg", "J_per_kgK"],
  ...["W", "W_per_K", "W_per_kgK", "W_per_m2", "W_per_mK", "W_per_m2K", "W_per_m2K4", "m2K_per_W"],
  ...["Pa", "deg", "frac", "ratio", "rel"],
];

/** Names that are a unit by themselves. */
export const unitWords: readonly string[] = ["hours", "minutes", "seconds", "days"];

/** Numbers that are counts, places in a list, money, or named so by the contract, and so carry no unit. */
export const bareWords: Readonly<Record<string, string>> = {
  p10: "contract: a band carries the unit of the name it stands under",
  p50: "contract: a band carries the unit of the name it stands under",
  p90: "contract: a band carries the unit of the name it stands under",
  price: "the person's currency, whatever it is",
  cost: "the person's currency, whatever it is",
  max: "contract: a count of pieces per visit",
  perDay: "a count per day, as the trip file words it",
  pieces: "a count",
  people: "a count",
  adults: "a count",
  children: "a count",
  spine: "a count of nodes",
  parts: "a count, or what adds up to a total in its unit",
  layers: "a count",
  steps: "a count",
  digits: "a count of decimals",
  most: "a count that is not passed",
  line: "place of a line in a file, from 1",
  index: "place in a list",
  layer: "contract: place in the column, 0 is the base",
  day: "day of the trip, 1 is the day of departure",
  cooler: "place in the list of coolers",
  inCooler: "place in the list of coolers",
  from: "place in the list of coolers",
  into: "place in the list of coolers",
  lot: "place in the list of lots",
  room: "cuts rows for numbers of any unit",
  guess: "place in a curve to begin the search at",
  order: "place in a list",
  tolerance: "error allowed, relative to what the stepper allows at 1",
  width: "columns of a text",
  member: "place in the ensemble",
  members: "a count",
  to: "the place after the last: members, or the upper end of a number of any unit",
  trip: "place in the list of trips",
  moment: "place in a grid of times",
  openings: "a count",
  acts: "a count",
  dimension: "place in the list of what is uncertain",
  seed: "a whole number that picks one of many equal sets of draws",
  value: "a number of any unit; its caller's name says which",
  values: "numbers of any unit; their caller's name says which",
};

/** Words at the end of a name that say that it counts or points: `coolerIndex`, `cellCount`. */
export const countEnding = /(?:Index|Count|Chain|Cells)$/;

/** Files where a number has whatever unit the person chose, or none. */
export const barePlaces: Readonly<Record<string, string>> = {
  "core/quantity/": "numbers of any unit pass through here, with the unit beside them",
  "core/forecast/series.ts": "reads a series of any unit",
  "core/tell/pictures/": "positions and sizes in user units of the SVG",
  "core/tell/numbers.ts": "rounds and writes numbers of any unit",
  "core/trip/file.ts": "the trip file as typed: the names are the contract's",
  "core/trip/notes.ts": "numbers of any unit, with their kind beside them",
  "core/trip/schema/": "bounds of what may be typed, in the unit that is typed",
};

/** Interfaces whose numbers carry the unit of the name that they stand under, or none. */
export const bareOwners: Readonly<Record<string, string>> = {
  HeatBudget: "contract: stands under heat_kJ",
  Vector: "heat of each node or its rate, as the stepper needs it",
  Bench: "room for the linear algebra of one stage",
};

/** Declarations that keep a bare name, each with its reason: `file#Owner.name`. */
export const bareDeclarations: Readonly<Record<string, string>> = {
  "core/cooler/builds.ts#Build.proportions": "a ratio of three lengths",
  "core/cooler/fleetState.ts#Fleet.nextAct": "place in the list of acts",
  "core/cooler/fleetState.ts#Fleet.refused": "a count",
  "core/cooler/geometry.ts#Touching.n": "a count",
  "core/cooler/geometry.ts#Touching.top": "place in the spine",
  "core/cooler/polyline.ts#segmentOf": "place in a curve",
  "core/cooler/contents.ts#Contents.slopes": "slopes, K·kg/J, for the solver only",
  "core/cooler/contents.ts#makeRoom": "room for numbers of any unit",
  "core/cooler/polyline.ts#slopesOf": "slopes, K·kg/J, for the solver only",
  "core/cooler/stage.ts#solveStage": "a count of rounds",
  "core/cooler/stepper.ts#tryStep": "an error relative to what is allowed",
  "core/cooler/types.ts#FoodLot.depth": "an order, not a length",
  "core/ensemble/normalQuantile.ts#normalQuantile": "a deviate in standard deviations",
  "core/ensemble/inputs.ts#weatherDays": "a count of days",
  "core/ensemble/priors.ts#valueAtQuantile": "a number of any unit",
  "core/ensemble/quantiles.ts#quantile": "a number of any unit",
  "core/ensemble/seriesBins.ts#binnedQuantiles": "a number of any unit",
  "core/forecast/coolerResult.ts#onGrid": "numbers of any unit",
  "core/forecast/forecast.ts#mostUrgentFirst": "an order",
  "core/heat/wall.ts#areaGrowth": "an exponent",
  "core/heat/wall.ts#areaGrowth.ratio": "a ratio",
  "core/matter/nearestName.ts#nameDistance": "a distance between spellings",
  "core/plan/leastPieces.ts#leastPieces": "counts of pieces",
  "core/plan/leastPieces.ts#leastPieces.budget": "a count of questions",
  "core/sky/hourRecord.ts#readNumber": "a number of any unit, its range beside it",
  "core/sky/hourRecord.ts#readNumber.min": "the range of a number of any unit",
  "core/sky/weather.ts#between": "a value of any unit",
  "core/tell/voice.ts#iceAmount": "pounds or kilograms, as the person has it",
  "core/trip/coolers.ts#coolerNamed": "place in the list of coolers",
  "core/trip/text.ts#ParsedText.lineOf": "place of a line in a file",
  "core/trip/text.ts#bounds.characters": "a count",
  "core/trip/text.ts#bounds.depth": "a count of levels",
  "core/trip/text.ts#bounds.problems": "a count",
};
