/** A coil takes more wire than its step gives, or more room than its length. */
import type { GuideFigure } from "../model/figures/figure.ts";
import type { Guide } from "../model/guide.ts";
import { kindOf } from "../model/partKind.ts";
import type { Part } from "../model/parts.ts";
import { hasUnit } from "../quantity/evaluation/value.ts";
import { windingLength, woundLength } from "../trade/coils/winding.ts";
import type { Check, Finding } from "./check.ts";
import { type GivenWire, wireGiven } from "./mechanics/givenWire.ts";
import { lengthText, partName } from "./words.ts";

export const check: Check = {
  meta: {
    code: "coil-wire",
    summary: "A coil takes more wire than its step gives, or more room than its length.",
    severity: "warning",
    source: "Geometry: turns × π × mean diameter",
    tags: ["figures"],
  },
  *guide(guide: Guide): Generator<Finding> {
    for (const part of coilsOf(guide)) {
      const turns = guide.figures.named("turns", part);
      if (turns) yield* judge(part, turns, guide);
    }
  },
};

const COILS = new WeakMap<readonly Part[], readonly Part[]>();

/** Few in any kit; found once for a list. */
function coilsOf(guide: Guide): readonly Part[] {
  const known = COILS.get(guide.parts);
  if (known) return known;
  const coils = guide.parts.filter((part) => {
    const kind = kindOf(part);
    return kind === "inductor" || kind === "transformer";
  });
  COILS.set(guide.parts, coils);
  return coils;
}

function* judge(part: Part, figure: GuideFigure, guide: Guide): Generator<Finding> {
  const turns = figure.evaluation?.value;
  const wire = lengthOf("wire", part, guide);
  if (!turns || !hasUnit(turns, "1") || wire === undefined) return;
  const former = lengthOf("former", part, guide);
  const leads = lengthOf("leads", part, guide) ?? 0;
  if (former !== undefined) {
    const needed = windingLength(turns.nominal, former + wire, leads);
    const given = wireGiven(part, figure, guide);
    if (given && needed > given.metres * (1 + 1e-6)) yield tooShort(part, needed, given, leads);
  }
  const room = guide.figures.named("length", part);
  const length = lengthOf("length", part, guide);
  const least = woundLength(turns.nominal, wire);
  if (room && length !== undefined && length < least * (1 - 1e-6)) {
    yield {
      at: room.at(),
      message: () =>
        `${turns.nominal} turns of ${lengthText(wire)} wire side by side take ${inShort(least)}, but ${partName(part)} is to be ${lengthText(length)} long. Lengthen the winding, or take thinner wire.`,
    };
  }
}

function tooShort(part: Part, needed: number, given: GivenWire, leads: number): Finding {
  const withLeads = leads > 0 ? `${lengthText(leads)} of leads included` : "without leads";
  return {
    at: given.at,
    message: () =>
      `${partName(part)} takes ${inShort(needed)} of wire, ${withLeads}, but ${given.by()} ${lengthText(given.metres)}. The builder comes up short with the coil half wound: give more, and list it.`,
  };
}

function lengthOf(symbol: string, part: Part, guide: Guide): number | undefined {
  const value = guide.figures.named(symbol, part)?.evaluation?.value;
  return value && hasUnit(value, "m") ? value.nominal : undefined;
}

/** To the millimetre, rounded up: wire that is too short helps nobody. */
function inShort(metres: number): string {
  return lengthText(Math.ceil(metres * 1000 - 1e-6) / 1000);
}
