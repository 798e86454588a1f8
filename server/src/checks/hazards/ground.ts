/**
 * What the guide as a whole says of its dangers: the voltages between its rails, the parts that
 * carry mains, hold a charge or get hot. Looked at again when lists, figures or limits change.
 */
import type { GuideFigure } from "../../model/figures/figure.ts";
import type { Guide } from "../../model/guide.ts";
import type { Part } from "../../model/parts.ts";
import type { Figure } from "../../syntax/dialect.ts";
import { chargeIn, isCapacitor, isOfCharge } from "./charge.ts";
import { hotByFigures, hotByKind, isOfHeat } from "./hotParts.ts";
import { carriesMains, isFusePart } from "./partDangers.ts";
import { symbolOf } from "./values.ts";
import { isVoltage, limitsOf, overRails, railsOf, voltageDanger } from "./voltages.ts";

export interface Ground {
  /** Why people must not touch the circuit under power; undefined when its voltages are low. */
  readonly voltage: string | undefined;
  /** Figures of the steps that speak of such a voltage, each with why. */
  readonly high: ReadonlyMap<Figure, string>;
  readonly mains: ReadonlySet<Part>;
  /** Why a part is dangerous once it has been under power. */
  readonly charged: ReadonlyMap<Part, string>;
  readonly hot: ReadonlyMap<Part, string>;
}

/** What the lists alone tell: kept apart, since figures change with each sign typed in one. */
interface ListedDangers {
  readonly mains: ReadonlySet<Part>;
  readonly capacitors: readonly Part[];
  /** Heat sinks and the like. */
  readonly hot: ReadonlyMap<Part, string>;
}

interface Known {
  readonly parts: readonly Part[];
  readonly listed: ListedDangers;
  readonly revision: number;
  readonly basis: Basis;
  readonly ground: Ground;
}

const KNOWN = new WeakMap<Guide, Known>();

/** The same object as long as nothing of it changes. */
export function groundOf(guide: Guide): Ground {
  const { parts, figures } = guide;
  const known = KNOWN.get(guide);
  if (known && known.parts === parts && known.revision === figures.revision) return known.ground;
  const listed = known?.parts === parts ? known.listed : listedDangers(parts);
  const telling = figures.withSymbol(tells);
  const { revision } = figures;
  if (known?.listed === listed && isStill(known.basis, guide, telling)) {
    KNOWN.set(guide, { ...known, parts, revision });
    return known.ground;
  }
  const made = makeGround(guide, listed, telling);
  const ground = known && sameGround(known.ground, made) ? known.ground : made;
  KNOWN.set(guide, { parts, listed, revision, basis: basisOf(guide, telling), ground });
  return ground;
}

/** Whether figures with this symbol tell of a danger. */
function tells(symbol: string): boolean {
  return isVoltage(symbol) || isOfCharge(symbol) || isOfHeat(symbol);
}

/** What the ground is made of beside the lists: most edits of figures touch none of it. */
interface Basis {
  readonly rails: readonly unknown[];
  readonly figures: readonly GuideFigure[];
  readonly evaluations: readonly unknown[];
  readonly stated: readonly unknown[];
}

function basisOf(guide: Guide, telling: readonly GuideFigure[]): Basis {
  return {
    rails: railValues(guide),
    figures: telling,
    evaluations: telling.map(({ evaluation }) => evaluation),
    stated: telling.map(({ stated }) => stated),
  };
}

/** Whether the basis is what the guide now gives; asked at each keystroke near a figure. */
function isStill(basis: Basis, guide: Guide, telling: readonly GuideFigure[]): boolean {
  const rails = railValues(guide);
  return (
    rails.length === basis.rails.length &&
    rails.every((rail, i) => rail === basis.rails[i]) &&
    telling.length === basis.figures.length &&
    telling.every(
      (figure, i) =>
        figure === basis.figures[i] &&
        figure.evaluation === basis.evaluations[i] &&
        figure.stated === basis.stated[i],
    )
  );
}

function railValues({ figures, frontMatter }: Guide): readonly unknown[] {
  return frontMatter.supply.map(({ name }) => figures.named(name)?.evaluation);
}

function listedDangers(parts: readonly Part[]): ListedDangers {
  const mains = new Set(parts.filter(carriesMains));
  // Fuses and their holders sit in the mains lead of a kit that has one.
  if (mains.size > 0) for (const part of parts) if (isFusePart(part)) mains.add(part);
  return { mains, capacitors: parts.filter(isCapacitor), hot: hotByKind(parts) };
}

function makeGround(guide: Guide, listed: ListedDangers, figures: readonly GuideFigure[]): Ground {
  const limits = limitsOf(guide);
  const rails = railsOf(guide);
  const high = figures
    .filter((figure) => isVoltage(symbolOf(figure)))
    .map((figure) => ({ figure, why: voltageDanger(figure, limits) }))
    .filter((one): one is { figure: GuideFigure; why: string } => one.why !== undefined);
  return {
    voltage: overRails(rails, limits) ?? high.find((one) => !isOfStep(one))?.why,
    high: new Map(high.filter(isOfStep).map(({ figure, why }) => [figure.figure, why])),
    mains: listed.mains,
    charged: chargeIn(listed.capacitors, rails, figures, guide),
    hot: new Map([...listed.hot, ...hotByFigures(figures)]),
  };
}

function isOfStep({ figure }: { readonly figure: GuideFigure }): boolean {
  return figure.step !== undefined;
}

function sameGround(a: Ground, b: Ground): boolean {
  return (
    a.voltage === b.voltage &&
    a.mains === b.mains &&
    sameMap(a.high, b.high) &&
    sameMap(a.charged, b.charged) &&
    sameMap(a.hot, b.hot)
  );
}

function sameMap<Key>(a: ReadonlyMap<Key, string>, b: ReadonlyMap<Key, string>): boolean {
  if (a.size !== b.size) return false;
  for (const [key, why] of a) if (b.get(key) !== why) return false;
  return true;
}
