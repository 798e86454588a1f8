/** Completion of tools and of what the builder supplies: the words that the guide uses already. */
import type { GuideState } from "../../model/guideState.ts";
import type { Completion } from "./completion.ts";

/** Texts of all marks of the role, most used first; tools of the front matter before them. */
export function usedTexts(guide: GuideState, role: "tool" | "own"): readonly Completion[] {
  const counts = new Map<string, number>();
  const count = (text: string) => counts.set(text, (counts.get(text) ?? 0) + 1);
  for (const { marks } of guide.pieces) {
    for (const { mark } of marks) {
      if (mark.role !== role) continue;
      for (const item of mark.items) if (item.kind === "text") count(item.text);
    }
  }
  const used = [...counts].sort((a, b) => b[1] - a[1]).map(([text]) => text);
  const named = role === "tool" ? guide.frontMatter.tools.map(({ value }) => value) : [];
  return [...new Set([...named, ...used])].map((label) => ({ label, kind: "word" }));
}
