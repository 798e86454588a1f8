/** The form of the word lists on hazards, one file a language. Patterns are those of `StemList`. */
import type { Hazard } from "../hazards.ts";

export interface HazardWords {
  /**
   * For each hazard what a note of it says, in its name or its text. The first is the name that is
   * written for it. Only what is unmistakable: "hot" alone speaks of many things.
   */
  readonly hazards: Readonly<Record<Hazard, readonly string[]>>;
  /** Words by which a text says that someone is hurt, and that someone dies. */
  readonly hurts: readonly string[];
  readonly kills: readonly string[];
  /** Words by which a text says that things break. */
  readonly breaks: readonly string[];
  /** Words with which a sentence tells how a hazard is avoided, wherever they stand in it. */
  readonly avoids: readonly string[];
  /** The same, where a command can begin; elsewhere they may be nouns. */
  readonly commands: readonly string[];
}
