import { lengthWords } from "../quantity/show.ts";
import type { Trip } from "../trip/types.ts";
import { fitsLocker } from "./locker.ts";

/** One line of the rules card. */
export interface RulesQuestion {
  topic: string;
  question: string;
  /** What the person found out, in their words; null: still open. */
  answer: string | null;
  says: string;
}

type Rules = NonNullable<Trip["rules"]>;

const unknown: Rules = {
  agency: null,
  read: null,
  permit: null,
  bears: null,
  locker: null,
  glass: null,
  fires: null,
  packOut: null,
  carcass: null,
};

const storage: Readonly<Record<NonNullable<Rules["bears"]>, string>> = {
  locker: "in a food locker",
  container: "in a container that bears cannot open",
  hang: "hung out of reach",
  none: "no rule on animals was found",
};

/** Who decides, and what was posted that day. */
function authority(rules: Rules): RulesQuestion[] {
  return [
    {
      topic: "agency",
      question: "Which agency, owner or tribe runs this land and water?",
      answer: rules.agency,
      says: "Their rules hold, not this card.",
    },
    {
      topic: "order of the day",
      question: "What do the orders say that are posted there today? When did you read them?",
      answer: rules.read === null ? null : `last read ${rules.read}`,
      says: "An order posted on the day overrules everything written here.",
    },
    {
      topic: "permit",
      question: "Which permit do you carry, and what does it ask of food, ice and waste?",
      answer: rules.permit,
      says: "Have it at hand at the ramp or gate.",
    },
  ];
}

/** Where food stands at night, and what fits there. */
function keeping(trip: Trip, rules: Rules): RulesQuestion[] {
  const lines: RulesQuestion[] = [
    {
      topic: "food storage",
      question: "How must food be kept from bears and other animals?",
      answer: rules.bears === null ? null : storage[rules.bears],
      says: "Coolers, drinks, trash and washing-up count as food.",
    },
  ];
  const { locker } = rules;
  if (locker === null && rules.bears !== null && rules.bears !== "locker") return lines;
  return [...lines, ...trip.coolers.map(({ name, body }) => lockerLine(name, body, locker))];
}

function lockerLine(
  name: string,
  body: Trip["coolers"][number]["body"],
  locker: Rules["locker"],
): RulesQuestion {
  const question = `Does ${name} go into the food locker?`;
  const says = "Reckoned from walls and inside; measure the door too, and try it shut.";
  if (locker === null) return { topic: "locker size", question, answer: null, says };
  const inside = [locker.length_m, locker.width_m, locker.height_m];
  const words = (["metric", "us"] as const).map((system) =>
    inside.map((one) => lengthWords(one, system)).join(" × "),
  );
  const fits = fitsLocker(body, locker) ? "it should go in, upright" : "it does not go in upright";
  return { topic: "locker size", question, answer: `${fits} (inside ${words.join("; ")})`, says };
}

/** What may not be brought, burnt or left. */
function leaving(trip: Trip, rules: Rules): RulesQuestion[] {
  const glass = rules.glass === null ? null : rules.glass ? "allowed" : "not allowed";
  return [
    {
      topic: "glass",
      question: "Is glass allowed on the water, the beach or in camp?",
      answer: glass,
      says: "Where it is not, pour over into cans or plastic before packing.",
    },
    {
      topic: "fires and grease",
      question: "Are fires and stoves allowed today, and where do ash and grease go?",
      answer: rules.fires,
      says: "Grease is carried out in a tin, not poured out.",
    },
    {
      topic: "waste water and trash",
      question: "Where may meltwater and washing-up water go, and what must be carried out?",
      answer: rules.packOut,
      says: "Meltwater that touched raw meat is waste water.",
    },
    ...carcassLine(trip, rules),
  ];
}

function carcassLine(trip: Trip, rules: Rules): RulesQuestion[] {
  if (trip.warmLoad === null && rules.carcass === null) return [];
  return [
    {
      topic: "carcass",
      question: "What must stay on or with the carcass, what may be left, and where must it be shown?",
      answer: rules.carcass,
      says: "Tags, proof of sex and transport rules differ by state and season.",
    },
  ];
}

function dryIceLine(trip: Trip): RulesQuestion[] {
  if (!trip.ice.some(({ form }) => form === "dry ice")) return [];
  return [
    {
      topic: "dry ice aboard",
      question: "Does the carrier, boat, hall or landlord allow dry ice, how much, and how marked?",
      answer: null,
      says: "Its gas suffocates: tell everybody who rides or sleeps near it, never below deck, never in a tight box.",
    },
  ];
}

/**
 * The rules card: what to ask of whom before the trip, with what was found out. It asks and certifies nothing; what
 * nobody answered stays a question, and the order posted that day overrules it.
 *
 * @source common-practice
 */
export function rulesQuestions(trip: Trip): RulesQuestion[] {
  const rules = trip.rules ?? unknown;
  return [...authority(rules), ...keeping(trip, rules), ...leaving(trip, rules), ...dryIceLine(trip)];
}
