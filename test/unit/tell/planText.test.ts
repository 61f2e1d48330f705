import { describe, expect, it } from "vitest";
import { planText } from "../../../core/tell/planText.ts";
import { plannedForecast } from "../fixtures/plannedForecast.ts";

const rich = plannedForecast();
const text = planText(rich, { units: "metric" });
const [head = "", rest = ""] = text.split("─".repeat(80));

describe("a plan in the terminal", () => {
  it("answers first, then says what to do in the order in which it is done, then the details", () => {
    const order = [
      "Larch Lake, seven days",
      "early: ice ",
      "Ice to get before you go: 18 pieces",
      "On the way\n",
      "late stays taped shut until Tue day 4, 18:30.",
      "Leave by Mon day 3, 13:30 for 2 × 5-kg bags of cubes from jetty shop, into early.",
      "Wed day 5, 09:00: empty frozen into late, ice +11 h, 6 to 17.",
      "Where everything goes\n",
      "8 things to do before you go, pack maps, daily cards and labels stand in the trip book",
      "The planned trip: out/trip.planned.yaml",
    ];
    const places = order.map((told) =>
      head
        .replace(/\n {2,}/g, " ")
        .replace(/\n(?=[a-z])/g, " ")
        .indexOf(told.replace("\n", "")),
    );
    expect(order.filter((_, i) => places[i]! < 0)).toEqual([]);
    expect([...places].sort((a, b) => a - b)).toEqual(places);
    expect(rest).toContain("where the cold went");
  });

  it("keeps within its columns", () => {
    for (const width of [60, 80, 120]) {
      const long = plannedForecast({ namesEnd: " & what somebody wrote far too long to fit anywhere" });
      const lines = planText(long, { units: "us", width }).split("\n");
      expect(lines.filter((line) => [...line].length > width)).toEqual([]);
    }
  });

  it("names the reserve for a warm load, where the plan asks for one", () => {
    expect(head.replace(/\s+/g, " ")).toContain(
      "Reserve for trout: 1 × 5-kg bag of cubes (5 kg) more in late",
    );
    expect(planText(plannedForecast({ plan: { warmLoad: null } }), { units: "metric" })).not.toContain(
      "Reserve",
    );
  });

  it("tells of a run that the file has as what was written", () => {
    const [run] = rich.result.plan!.iceRuns;
    const iceRuns = [{ ...run!, why: "in your file", where: "where you wrote", leaveBy: run!.at }];
    const told = planText(plannedForecast({ plan: { iceRuns } }), { units: "metric" });
    expect(told).toContain("Mon day 3, 15:00: 2 × 5-kg bags of cubes into early, as you wrote.");
    expect(told).not.toContain("from where you wrote");
  });

  it("leaves out what there is none of", () => {
    const bare = planText(
      plannedForecast({ plan: { iceRuns: [], merges: [], otherwise: [], assign: [], file: null } }),
      { units: "metric" },
    );
    expect(bare).not.toContain("Where everything goes");
    expect(bare).not.toContain("The planned trip");
    expect(bare).not.toContain("Leave by");
  });

  it("tells all that freezing ruins in one line, and what is heavy once", () => {
    const warnings = [
      { code: "freezes", says: "eggs would freeze, and that ruins it", path: "food[2]" },
      { code: "freezes", says: "green salad would freeze, and that ruins it", path: "food[5]" },
      { code: "heavy", says: "early weighs 44 kg packed", path: "coolers[0]" },
    ];
    const told = planText({ ...rich, result: { ...rich.result, warnings } }, { units: "metric" });
    expect(told).toContain("! Would freeze, and freezing ruins it: eggs and green salad\n");
    expect(told).not.toContain("early weighs 44 kg");
    expect(told).toContain("Heavy to lift, packed");
  });
});
