import { rulesQuestions } from "../../safety/rulesCard.ts";
import { escaped, printable } from "../words.ts";
import type { Book } from "./book.ts";
import { lineCount, type Piece, paragraph, SHEET } from "./flow.ts";
import { element, TICK } from "./html.ts";
import { pages, type Sheet } from "./page.ts";

/** What to ask the agency in charge, with room for what is still open. */
export function rulesPage(book: Book): Sheet[] {
  const questions = rulesQuestions(book.forecast.trip);
  if (questions.length === 0) return [];
  const { paper } = book.options;
  const wide_cm = 0.58 * SHEET[paper].wide_cm - 0.3;
  const open = questions.filter(({ answer }) => answer === null).length;
  const pieces: Piece[] = [
    paragraph("The order posted on the day comes before this card. It asks; it grants nothing.", paper),
    {
      columns: [
        { head: "", wide_frac: 0.05 },
        { head: "Ask", wide_frac: 0.58 },
        { head: "Answer, and who gave it", wide_frac: 0.37 },
      ],
      rows: questions.map(({ topic, question, answer, says }) => {
        const ask = `${printable(topic)}: ${printable(question)}`;
        const more = printable(says);
        return {
          cells: [
            { html: TICK, lines: 1 },
            {
              html:
                element("b", "", escaped(ask)) + (more === "" ? "" : element("span", "why", escaped(more))),
              lines: lineCount(ask, wide_cm, 1.12) + (more === "" ? 0 : lineCount(more, wide_cm)),
            },
            answer ?? "",
          ],
          least_cm: answer === null ? 1.5 : 0.8,
          kind: "grid",
        };
      }),
    },
  ];
  return pages(
    "Rules",
    open === 0 ? "Rules of the place" : `Rules of the place: ${open} still to ask`,
    pieces,
    book,
  );
}
