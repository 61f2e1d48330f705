export const looks = ["day", "sun", "night"] as const;
export type Look = (typeof looks)[number];

export const lookWords: Record<Look, string> = {
  day: "Day",
  sun: "Sun: black and white",
  night: "Night: red on black",
};

/** Where the choice is kept: `public/firstLook.js` reads it before anything is drawn, which no database allows. */
const KEY = "look";

/** How the page looks; chosen by hand, never guessed. */
class Looks {
  now = $state<Look>("day");

  begin(): void {
    const shown = document.documentElement.dataset.look;
    this.#show(looks.find((one) => one === shown) ?? "day");
  }

  choose(look: Look): void {
    this.#show(look);
    try {
      localStorage.setItem(KEY, look);
    } catch {
      // It lasts as long as the page; that nothing is kept is said elsewhere.
    }
  }

  #show(look: Look): void {
    this.now = look;
    document.documentElement.dataset.look = look;
    const ground = getComputedStyle(document.documentElement).getPropertyValue("--sheet").trim();
    document.querySelector('meta[name="theme-color"]')?.setAttribute("content", ground);
  }
}

export const look = new Looks();
