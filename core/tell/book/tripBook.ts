import type { Forecast } from "../../forecast/types.ts";
import { answerPage } from "./answerPage.ts";
import { bookOf } from "./book.ts";
import { cautionsPage, closeOutPage } from "./closeOutPage.ts";
import { coolerPages } from "./coolerPage.ts";
import { countdownPage } from "./countdownPage.ts";
import { crewPage } from "./crewPage.ts";
import { dayPages } from "./dayPage.ts";
import { drinksPage } from "./drinksPage.ts";
import { eatPages } from "./eatPage.ts";
import { icePage } from "./icePage.ts";
import { labelPages } from "./labelPages.ts";
import { logPage } from "./logPage.ts";
import type { BookOptions } from "./options.ts";
import { documentOf } from "./page.ts";
import { pullPages } from "./pullPages.ts";
import { rulesPage } from "./rulesPage.ts";
import { runsPage, warmLoadPage } from "./runsPage.ts";
import { shoppingPages } from "./shoppingPage.ts";

/**
 * The trip on paper: one HTML document, black on white, a sheet a thing, with everything a crew needs to pack, run and
 * close the trip from it. It holds no script and fetches nothing; whatever a person typed is told as text. It is no
 * record of what happened, and it makes no food fit to eat: verdicts are the forecast's. A page with nothing to tell is
 * left out.
 *
 * @param forecast with its `plan` filled
 * @throws DomainError for a forecast without a plan
 */
export function tripBook(forecast: Forecast, options: BookOptions): string {
  const book = bookOf(forecast, options);
  const sheets = [
    ...answerPage(book),
    ...icePage(book),
    ...countdownPage(book),
    ...shoppingPages(book),
    ...coolerPages(book),
    ...labelPages(book),
    ...crewPage(book),
    ...dayPages(book),
    ...pullPages(book),
    ...drinksPage(book),
    ...eatPages(book),
    ...runsPage(book),
    ...warmLoadPage(book),
    ...logPage(book),
    ...rulesPage(book),
    ...closeOutPage(book),
    ...cautionsPage(book),
  ];
  return documentOf(sheets, book);
}
