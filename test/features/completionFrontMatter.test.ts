import { describe, expect, test } from "vitest";
import { chosen, offered } from "./completing.ts";

const LIST =
  "--- file: parts.csv\nDesignator,Comment,Case,- odd\nR1,1k,DIN0207,\nK2,RLY,ODD-CASE,\n,M3x6,,";

function kit(head: string): string {
  return `---\nparts: parts.csv\n${head}\n---\n\n1. Fit [R1] with [tool: pliers].\n${LIST}`;
}

describe("offered in the front matter are", () => {
  test("keys that are not there yet", async () => {
    const result = await offered(kit("title: T\n¦"));
    expect(result.labels).toContain("language");
    expect(result.labels).not.toContain("parts");
    expect(result.labels).not.toContain("title");
    expect(chosen(result, "tools")).toBe("tools: ");
  });

  test.each([
    ["a half-typed key", "lan¦", "language", "language: "],
    ["another key in the middle of one", "la¦nguage: en", "title", "title: en"],
    ["the key itself", "la¦nguage: en", "language", "language: en"],
    [
      "another check in the middle of one",
      "checks: { long¦-step: off }",
      "height-order",
      "checks: { height-order: off }",
    ],
    ["a language", "language: ¦", "de", "language: de"],
    ["a check", "checks: { ¦ }", "long-step", "checks: { long-step:  }"],
    [
      "a second check",
      "checks: { long-step: off, hei¦ }",
      "height-order",
      "checks: { long-step: off, height-order:  }",
    ],
    ["a check on a line of its own", "checks:\n  l¦", "long-step", "  long-step: "],
    ["a severity", "checks: { long-step: ¦ }", "off", "checks: { long-step: off }"],
    ["braces with the first name", "checks: ¦", "long-step", "checks: { long-step: $0 }"],
    ["a column's meaning", "columns: { va¦ }", "value", "columns: { value:  }"],
    ["a column of the list", "columns: { value: C¦ }", "Comment", "columns: { value: Comment }"],
    ["a part without height", "heights: { K¦ }", "K2", "heights: { K2:  }"],
    ["a package without height", "heights: { ¦ }", "ODD-CASE", "heights: { ODD-CASE:  }"],
    ["a part off the board", "off-board: ¦", "K2", "off-board: [K2$0]"],
    ["a rating", "derating: { ¦ }", "power", "derating: { power:  }"],
    [
      "a header that YAML would misread",
      "columns: { value: ¦ }",
      "- odd",
      'columns: { value: "- odd" }',
    ],
    ["a tool of the guide", "tools: [iron, ¦]", "pliers", "tools: [iron, pliers]"],
    ["brackets with the first tool", "tools: ¦", "pliers", "tools: [pliers$0]"],
    ["a line of hardware", "spares: { ¦ }", "M3x6", "spares: { M3x6:  }"],
    ["a unit of a rail", "supply: { VCC: 12 ¦ }", "V", "supply: { VCC: 12 V }"],
    [
      "a name in a sum",
      "supply: { VCC: 12 V }\nfigures: { A: 2 * ¦ }",
      "VCC",
      "figures: { A: 2 * VCC }",
    ],
  ])("%s", async (_, head, label, line) => {
    const result = await offered(kit(head));
    expect(result.labels).toContain(label);
    expect(chosen(result, label)).toBe(line);
  });

  test("the boards whose room is given, and how serious a check is by default", async () => {
    const rows = "--- file: parts.csv\nBoard,Designator,Value\nmain,R1,1k\nrelay,R2,1k";
    const boards = await offered(`---\nparts: parts.csv\nclearance: { ¦ }\n---\n\n${rows}`);
    expect(boards.labels).toEqual(["main", "relay"]);
    const { found } = await offered(kit("checks: { unknown-height: ¦ }"));
    const usual = found!.items.filter(({ detail }) => detail === "as it is by default");
    expect(usual.map(({ label }) => label)).toEqual(["info"]);
  });

  test.each([
    ["in a title", "title: T¦"],
    ["in a comment", "# ¦"],
  ])("nothing %s", async (_, head) => {
    expect((await offered(kit(head))).found).toBeUndefined();
  });
});
