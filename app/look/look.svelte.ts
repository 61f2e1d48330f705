import { keepSetting, setting } from "../offline/store.ts";

export const looks = ["day", "sun", "night"] as const;
export type Look = (typeof looks)[number];

export const lookWords: Record<Look, string> = {
  day: "Day",
  sun: "Sun: black and white",
  night: "Night: red on black",
};

/** How the page looks; chosen by hand, never guessed. */
class Looks {
  now = $state<Look>("day");

  async begin(): Promise<void> {
    try {
      const kept = await setting("look");
      const known = looks.find((one) => one === kept);
      if (known !== undefined) this.#show(known);
    } catch {
      // Without storage it begins by day; that nothing is kept is said elsewhere.
    }
  }

  choose(look: Look): void {
    this.#show(look);
    keepSetting("look", look).catch(() => {});
  }

  #show(look: Look): void {
    this.now = look;
    document.documentElement.dataset.look = look;
    const ground = getComputedStyle(document.documentElement).getPropertyValue("--sheet").trim();
    document.querySelector('meta[name="theme-color"]')?.setAttribute("content", ground);
  }
}

export const look = new Looks();
