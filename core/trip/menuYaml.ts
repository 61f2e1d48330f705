import { Document, isMap, isSeq, type ParsedNode, parseDocument, YAMLSeq } from "yaml";
import { DomainError } from "../quantity/errors.ts";
import type { MenuFood } from "./menuCsv.ts";

/** Foods of a menu as entries under `food:` of a trip file, with a remark at each guess. */
export function menuYaml(foods: readonly MenuFood[]): string {
  if (foods.length === 0) return "food: []\n";
  const lines = foods.map(({ food, guesses }) => {
    const document = new Document(food);
    if (isMap(document.contents)) document.contents.flow = true;
    const remark = guesses.length === 0 ? "" : ` # guessed: ${guesses.join("; ")}`;
    return `  - ${document.toString({ lineWidth: 0 }).trim()}${remark}\n`;
  });
  return `food:\n${lines.join("")}`;
}

/**
 * A trip file with the foods of a menu at the end of its food. Its comments stay; spaces between values may change. JSON
 * stays JSON, without remarks.
 *
 * @param text a file that `readTrip` accepts
 * @throws DomainError when the text is no trip file
 */
export function withMenu(text: string, foods: readonly MenuFood[]): string {
  const json = asJson(text);
  if (json !== null) {
    const food = [...(Array.isArray(json.food) ? json.food : []), ...foods.map((one) => one.food)];
    return `${JSON.stringify({ ...json, food }, null, 2)}\n`;
  }
  const document = parseDocument(text, { uniqueKeys: false });
  if (!isMap(document.contents)) throw new DomainError("text must be a trip file, got no mapping");
  const list = document.get("food");
  const seq = isSeq(list) ? list : new YAMLSeq<ParsedNode>(document.schema);
  // Remarks have no place in a list in brackets.
  seq.flow = false;
  for (const { food, guesses } of foods) {
    const node = document.createNode(food, { flow: true });
    if (guesses.length > 0) node.comment = ` guessed: ${guesses.join("; ")}`;
    seq.items.push(node);
  }
  document.set("food", seq);
  return document.toString({ lineWidth: 0 });
}

function asJson(text: string): { food?: unknown } | null {
  try {
    return JSON.parse(text) as { food?: unknown };
  } catch {
    return null;
  }
}
