/** Which column lists the designators. */
import { type Candidates, percent } from "./candidates.ts";
import type { ColumnProfile } from "./profile.ts";

/** The column whose cells list designators; its name counts where several could be it. */
export function chooseDesignators(columns: Candidates): void {
  let best: number | undefined;
  let most = 0;
  for (const [column, profile] of columns.free()) {
    const rank = columns.names[column]?.ranks.get("designator");
    const bonus = rank === undefined ? 0 : rank === 0 ? 0.35 : 0.15;
    const score = designatorScore(columns, profile, rank) + bonus;
    // Packages (`RM5`) and type numbers have a designator's form, too.
    const isOther = rank === undefined && columns.isNamed(column);
    const isOne =
      profile.listed >= (isOther ? 0.8 : 0.5) ||
      (rank === 0 && (profile.listed > 0.1 || profile.named >= 0.5));
    if (!isOne || score <= most) continue;
    most = score;
    best = column;
  }
  if (best === undefined) return;
  const { listed, named } = columns.profiles[best]!;
  const byName = columns.names[best]?.ranks.has("designator") ? ", and its name says so" : "";
  columns.take(
    "designator",
    best,
    `${percent(Math.max(listed, named))} of its cells are designators${byName}`,
  );
}

function designatorScore(
  columns: Candidates,
  profile: ColumnProfile,
  rank: number | undefined,
): number {
  const listed = rank === 0 ? Math.max(profile.listed, profile.named / 2) : profile.listed;
  const coverage = profile.filled / Math.max(1, columns.rows.length);
  return listed * Math.max(profile.plausible, 0.2) * (0.4 + 0.6 * coverage);
}
