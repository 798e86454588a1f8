/**
 * Tools and consumables that build guides name, and the words for them in each language. Which ones
 * a workshop has and how guides call them is common practice.
 */

/** What one works with, and what is used up; the words for each are in the files of languages. */
export const TOOLS = [
  "soldering iron",
  "desoldering pump",
  "side cutters",
  "pliers",
  "tweezers",
  "wire stripper",
  "screwdriver",
  "torque screwdriver",
  "hex key",
  "spanner",
  "drill",
  "drill bit",
  "countersink",
  "centre punch",
  "hammer",
  "file",
  "vice",
  "saw",
  "tap",
  "scriber",
  "calliper",
  "ruler",
  "multimeter",
  "oscilloscope",
  "frequency counter",
  "signal generator",
  "bench supply",
  "component tester",
  "dummy load",
  "clip lead",
  "magnifier",
  "hot air",
  "crimping tool",
  "knife",
  "scissors",
  "wrist strap",
  "trimming tool",
] as const;

export const CONSUMABLES = [
  "flux",
  "desoldering braid",
  "thermal paste",
  "alcohol",
  "glue",
  "thread locker",
  "heat-shrink tubing",
  "tape",
  "cable tie",
  "abrasive paper",
  "cutting oil",
  "swab",
  "cloth",
  "varnish",
] as const;

export type Tool = (typeof TOOLS)[number];
export type Consumable = (typeof CONSUMABLES)[number];
export type Thing = Tool | Consumable;

/** Patterns (`text/stems.ts`) by what they mean, in one language. */
export type ThingWords = Readonly<Record<Thing, readonly string[]>>;

export function isConsumable(thing: Thing): thing is Consumable {
  return (CONSUMABLES as readonly string[]).includes(thing);
}
