/** Where one can be, in the order of the work. A place that does not work yet is not listed. */
export const places = ["describe", "decide", "ready", "pack", "camp", "learn"] as const;
export type Place = (typeof places)[number];

export const placeWords: Record<Place, string> = {
  describe: "Describe",
  decide: "Decide",
  ready: "Ready",
  pack: "Pack",
  camp: "Camp",
  learn: "Learn",
};

function placeNow(): Place {
  const asked = location.hash.replace(/^#\/?/, "").split("/")[0];
  return places.find((place) => place === asked) ?? "describe";
}

/** What another device sent along with the address; null: nothing. */
const sentNow = (): string | null => /^#\/sent\/(.+)$/s.exec(location.hash)?.[1] ?? null;

/** Follows the address, so that back and forward do what they do everywhere. */
class Router {
  place = $state<Place>(placeNow());
  sent = $state<string | null>(sentNow());

  constructor() {
    addEventListener("hashchange", () => {
      this.place = placeNow();
      this.sent = sentNow();
    });
  }

  /** Done with what was sent: a reload does not ask again. */
  endSent(): void {
    history.replaceState(null, "", "#/describe");
    this.place = "describe";
    this.sent = null;
  }

  go(place: Place): void {
    location.hash = `#/${place}`;
  }
}

export const router = new Router();
