/**
 * The screens of the app and how a person comes to each of them, for the pictures of `npm run screens` and for the tests that
 * look at every screen. Each is reached from a plan that is made already, unless it says otherwise.
 */

/** 7:05 in the morning of the second day of the river template, in Denver: the trip goes on. */
export const duringTrip_ms = Date.parse("2027-06-11T13:05:00Z");

const press = (page, name) => page.getByRole("button", { name, exact: true }).first().click();

async function toPlace(page, place) {
  await page.evaluate((name) => {
    location.hash = `#/${name}`;
  }, place);
  await page.locator("main h1").first().waitFor();
}

async function today(page) {
  await toPlace(page, "camp");
  await page.getByRole("heading", { level: 1, name: /^Day / }).waitFor();
  for (const name of ["Back", "Back", "Back", "Today"]) {
    const button = page.locator(".camp").getByRole("button", { name, exact: true });
    if ((await button.count()) > 0) await button.click();
  }
  await page.locator('.camp[data-card="today"]').waitFor();
}

async function moreOf(page, name) {
  await today(page);
  await press(page, "More");
  await press(page, name);
}

async function answered(page) {
  await today(page);
  await press(page, "Log ice");
  for (const name of ["galley", "½", "No", "Done"]) await press(page, name);
  await page.locator('.camp[data-card="answer"][data-reckoning="false"]').waitFor({ timeout: 120_000 });
}

const shared = async (page, summary) => {
  await toPlace(page, "describe");
  await press(page, "Share");
  if (summary !== undefined) await page.getByText(summary, { exact: true }).first().scrollIntoViewIfNeeded();
};

/** `reach` opens the screen, `leave` puts it away again where it covers others. */
export const screens = [
  { name: "describe", reach: (page) => toPlace(page, "describe") },
  { name: "decide", reach: (page) => toPlace(page, "decide") },
  { name: "ready", reach: (page) => toPlace(page, "ready") },
  { name: "pack", reach: (page) => toPlace(page, "pack") },
  { name: "camp-today", reach: today },
  {
    name: "camp-log",
    reach: async (page) => {
      await today(page);
      await press(page, "Log ice");
      await press(page, "galley");
    },
  },
  { name: "camp-answer", reach: answered },
  { name: "camp-eat", reach: (page) => moreOf(page, "What to eat, what to throw away") },
  { name: "camp-what-if", reach: (page) => moreOf(page, "What if plans change?") },
  { name: "camp-logged", reach: (page) => moreOf(page, "What was logged") },
  { name: "camp-exchange", reach: (page) => moreOf(page, "Other phones and files") },
  {
    name: "learn",
    reach: async (page) => {
      await toPlace(page, "learn");
      await page.getByText("Test a cooler at home").click();
    },
  },
  { name: "share", reach: (page) => shared(page), leave: (page) => page.keyboard.press("Escape") },
];

export const looks = ["day", "sun", "night"];

/** Chooses a look as its button does, without the way to it. */
export const putOn = (page, look) =>
  page.evaluate((name) => {
    document.documentElement.dataset.look = name;
  }, look);

/** The app with a template begun, and planned on few runs where `isPlanned`. */
export async function begin(page, address, template = "river", isPlanned = true) {
  await page.goto(address);
  await page.getByRole("radio", { name: new RegExp(`^${template}`) }).check();
  await page.getByRole("button", { name: "Begin", exact: true }).click();
  await page.getByRole("button", { name: "Plan it" }).first().waitFor();
  if (!isPlanned) return;
  await page.getByRole("button", { name: "Plan it" }).first().click();
  await page.getByText(/From 256 runs/).waitFor({ timeout: 240_000 });
}
