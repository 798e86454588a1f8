/** What the check of a guide finds under the new list and did not find under the old one. */
import type { Draft } from "./drafts.ts";
import type { RevisionFinding, TouchedKind } from "./touched.ts";

const KINDS: Readonly<Record<string, TouchedKind>> = {
  "duplicate-part": "step",
  "doubtful-mention": "step",
  "look-alike": "step",
  "missing-part": "step",
  "not-fitted-part": "step",
  "polarity-note": "step",
  "stated-value": "step",
  "unknown-part": "step",
  "value-marking": "step",
  "empty-set": "set",
  unmatched: "set",
  "wrong-count": "set",
  "height-order": "order",
  "held-back-part": "order",
  "made-late": "order",
  "matched-late": "order",
  "socket-first": "order",
  "trial-left": "order",
  "unknown-height": "order",
  "too-tall": "clearance",
  "circular-figure": "figure",
  "duplicate-figure": "figure",
  "figure-syntax": "figure",
  "formula-range": "figure",
  "stale-figure": "figure",
  "unit-clash": "figure",
  "unknown-name": "figure",
  "coil-wire": "rating",
  "hole-size": "rating",
  "lead-bend": "rating",
  overload: "rating",
  "reading-outside": "rating",
  "screw-length": "rating",
  "torque-limit": "rating",
  "torque-missing": "rating",
  "hazard-incomplete": "hazard",
  "hazard-late": "hazard",
  "hazard-missing": "hazard",
  "power-up-missing": "hazard",
  "power-up-order": "hazard",
  "count-mismatch": "list",
  "designator-syntax": "list",
  "repeated-designator": "list",
  "unreadable-list": "list",
};

export function kindOfFinding({ code }: RevisionFinding): TouchedKind {
  return KINDS[code] ?? "other";
}

/** Codes that say of a place what is told of the part there anyway. */
const TOLD: Readonly<Partial<Record<TouchedKind, ReadonlySet<string>>>> = {
  step: new Set([
    "doubtful-mention",
    "missing-part",
    "not-fitted-part",
    "stated-value",
    "unknown-part",
    "value-marking",
  ]),
  figure: new Set(["stale-figure", "unknown-name"]),
  hazard: new Set(["hazard-late", "hazard-missing"]),
  set: new Set(["empty-set", "unmatched"]),
};

/** Whether the finding only repeats what a touched thing of that kind says. */
export function isTold(kind: TouchedKind, { code }: RevisionFinding): boolean {
  return TOLD[kind]?.has(code) === true;
}

/** `list`: its text is another, so of findings in it the words alone are held against each other. */
export function newFindings(
  before: readonly RevisionFinding[],
  after: readonly RevisionFinding[],
  list: string,
): RevisionFinding[] {
  const known = new Set(before.map((one) => keyOf(one, list)));
  return after.filter((one) => !known.has(keyOf(one, list)) && !isSummary(one, list));
}

function keyOf({ code, uri, span, message }: RevisionFinding, list: string): string {
  return [code, uri, uri === list ? "" : span.start, message].join("\n");
}

/** At the head of the guide: what is missing is told line by line in the list. */
function isSummary({ code, uri }: RevisionFinding, list: string): boolean {
  return code === "more-findings" || (code === "missing-part" && uri !== list);
}

/** Whether the finding, by its words, means what the draft is about. */
export function speaksOf({ kind, names }: Draft, { message }: RevisionFinding): boolean {
  if (kind === "figure") return true;
  if (kind === "hazard") return names.some((name) => message.includes(name));
  const words = new Set(message.split(/[^\p{L}\p{N}_]+/u));
  // Hardware has names of several words, which are quoted.
  return names.some((name) => words.has(name) || message.includes(`"${name}"`));
}

export function isMissing({ code }: RevisionFinding): boolean {
  return code === "missing-part";
}
