/**
 * What the guide as a whole says of its dangers: the voltages between its rails, the parts that
 * carry mains, hold a charge or get hot. Made anew when lists, supply, figures or limits change.
 */
import type { Guide } from "../../model/guide.ts";
import type { Part } from "../../model/parts.ts";
import { chargeIn } from "./charge.ts";
import { hotParts } from "./hotParts.ts";
import { carriesMains, isFusePart } from "./partDangers.ts";
import { highVoltage, railsOf } from "./voltages.ts";

export interface Ground {
  /** Why people must not touch the circuit under power; undefined when its voltages are low. */
  readonly voltage: string | undefined;
  readonly mains: ReadonlySet<Part>;
  /** Why a part is dangerous once it has been under power. */
  readonly charged: ReadonlyMap<Part, string>;
  readonly hot: ReadonlyMap<Part, string>;
}

interface Known {
  readonly key: readonly unknown[];
  readonly ground: Ground;
}

const KNOWN = new WeakMap<Guide, Known>();

/** The same object as long as nothing of it changes. */
export function groundOf(guide: Guide): Ground {
  const key = [guide.parts, ...valuesIn(guide)];
  const known = KNOWN.get(guide);
  if (known && key.length === known.key.length && key.every((one, i) => one === known.key[i])) {
    return known.ground;
  }
  const ground = makeGround(guide);
  KNOWN.set(guide, { key, ground });
  return ground;
}

function makeGround(guide: Guide): Ground {
  const rails = railsOf(guide);
  const mains = new Set(guide.parts.filter(carriesMains));
  if (mains.size > 0) for (const part of guide.parts) if (isFusePart(part)) mains.add(part);
  return {
    voltage: highVoltage(rails, guide),
    mains,
    charged: chargeIn(rails, guide),
    hot: hotParts(guide),
  };
}

function* valuesIn({ frontMatter }: Guide): Generator<string, void, void> {
  for (const { name, value } of [...frontMatter.supply, ...frontMatter.figures]) {
    yield name;
    yield value;
  }
}
