/** The worst case is never narrower than what random draws find, and not much wider. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { computed, type Definitions, sum } from "./sums.ts";

interface Inputs {
  readonly a: number;
  readonly b: number;
  readonly c: number;
}

/** An expression with a second way to compute it that shares nothing with the first. */
interface Case {
  readonly text: string;
  readonly of: (x: Inputs) => number;
}

const leaf: fc.Arbitrary<Case> = fc.oneof(
  fc.constantFrom<keyof Inputs>("a", "b", "c").map((name) => ({
    text: name as string,
    of: (x: Inputs) => x[name],
  })),
  fc.constantFrom(0.5, 2, 3, 10).map((value) => ({ text: String(value), of: () => value })),
);

const binary: { readonly [sign: string]: (x: number, y: number) => number } = {
  "+": (x, y) => x + y,
  "-": (x, y) => x - y,
  "*": (x, y) => x * y,
  "/": (x, y) => x / y,
  "∥": (x, y) => 1 / (1 / x + 1 / y),
};

const unary: { readonly [name: string]: (x: number) => number } = {
  abs: Math.abs,
  sqrt: Math.sqrt,
  sin: Math.sin,
  cos: Math.cos,
  exp: Math.exp,
  ln: Math.log,
};

const anyCase = fc.letrec<{ one: Case }>((tie) => ({
  one: fc.oneof(
    { depthSize: "small", withCrossShrink: true },
    leaf,
    fc
      .tuple(tie("one"), fc.constantFrom(...Object.keys(binary)), tie("one"))
      .map(([x, sign, y]) => ({
        text: `(${x.text} ${sign} ${y.text})`,
        of: (at: Inputs) => binary[sign]!(x.of(at), y.of(at)),
      })),
    fc.tuple(fc.constantFrom(...Object.keys(unary)), tie("one")).map(([name, x]) => ({
      text: `${name}(${x.text})`,
      of: (at: Inputs) => unary[name]!(x.of(at)),
    })),
    tie("one").map((x) => ({ text: `(${x.text})^2`, of: (at: Inputs) => x.of(at) ** 2 })),
    fc.tuple(tie("one"), tie("one")).map(([x, y]) => ({
      text: `min(${x.text}; ${y.text})`,
      of: (at: Inputs) => Math.min(x.of(at), y.of(at)),
    })),
  ),
})).one;

const LIMITS: { readonly [name in keyof Inputs]: readonly [number, number] } = {
  a: [1, 3],
  b: [0.5, 0.7],
  c: [-2, 4],
};
const DEFINITIONS: Definitions = { a: "2 ± 1", b: "0.6 ± 0.1", c: "1 ± 3" };

/** Numbers between 0 and 1 that are the same in each run (mulberry32). */
function draws(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** Least and greatest value that `count` draws find; corners and middles are among them. */
function drawn({ of }: Case, count: number, seed: number) {
  const next = draws(seed);
  const pick = ([low, high]: readonly [number, number]) => {
    const r = next() * 1.2 - 0.1;
    return low + Math.min(1, Math.max(0, r)) * (high - low);
  };
  let min = Infinity;
  let max = -Infinity;
  for (let i = 0; i < count; i++) {
    const value = of({ a: pick(LIMITS.a), b: pick(LIMITS.b), c: pick(LIMITS.c) });
    min = Math.min(min, value);
    max = Math.max(max, value);
  }
  return { min, max };
}

/** What rounding may make of values of this size. */
const slack = (...values: number[]) => 1e-9 * Math.max(1e-9, ...values.map(Math.abs));

describe("the worst case", () => {
  test("holds all of 1,000 draws, for any expression", () => {
    let computed = 0;
    fc.assert(
      fc.property(anyCase, fc.integer(), (one, seed) => {
        fc.pre(one.text.length < 500);
        const { value } = sum(one.text, DEFINITIONS);
        if (!value) return;
        computed++;
        const { min, max } = drawn(one, 1000, seed);
        expect(value.min).toBeLessThanOrEqual(min + slack(min, max));
        expect(value.max).toBeGreaterThanOrEqual(max - slack(min, max));
      }),
      { numRuns: 3000 },
    );
    expect(computed).toBeGreaterThan(1000);
  });

  test("holds all of 100,000 draws, for expressions put together at random", () => {
    let computed = 0;
    fc.assert(
      fc.property(anyCase, fc.integer(), (one, seed) => {
        fc.pre(/[abc]/.test(one.text) && one.text.length > 10 && one.text.length < 500);
        const { value } = sum(one.text, DEFINITIONS);
        if (!value) return;
        computed++;
        const { min, max } = drawn(one, 100_000, seed);
        expect(value.min).toBeLessThanOrEqual(min + slack(min, max));
        expect(value.max).toBeGreaterThanOrEqual(max - slack(min, max));
      }),
      { numRuns: 30 },
    );
    expect(computed).toBeGreaterThan(5);
  });

  const cases: Case[] = [
    { text: "a^2 * b", of: ({ a, b }) => a ** 2 * b },
    { text: "a * (4 - a)", of: ({ a }) => a * (4 - a) },
    { text: "c^2 - 2 * c + a", of: ({ a, c }) => c ** 2 - 2 * c + a },
    { text: "a / (a + b)", of: ({ a, b }) => a / (a + b) },
    { text: "(a - b) / (a + b)", of: ({ a, b }) => (a - b) / (a + b) },
    { text: "sin(c) * a - cos(c) * b", of: ({ a, b, c }) => Math.sin(c) * a - Math.cos(c) * b },
    { text: "abs(c) * exp(-a * b)", of: ({ a, b, c }) => Math.abs(c) * Math.exp(-a * b) },
    { text: "c^3 - 3 * c", of: ({ c }) => c ** 3 - 3 * c },
    { text: "a ∥ b - b ∥ 2", of: ({ a, b }) => (a * b) / (a + b) - (b * 2) / (b + 2) },
    { text: "min(a; c) + max(b; c)", of: ({ a, b, c }) => Math.min(a, c) + Math.max(b, c) },
    { text: "sqrt(a) - a / 3", of: ({ a }) => Math.sqrt(a) - a / 3 },
    { text: "a^b", of: ({ a, b }) => a ** b },
  ];

  test.each(cases)("of $text holds all of 100,000 draws and is tight", (one) => {
    const value = computed(one.text, DEFINITIONS);
    const { min, max } = drawn(one, 100_000, 1);
    expect(value.min).toBeLessThanOrEqual(min + slack(min, max));
    expect(value.max).toBeGreaterThanOrEqual(max - slack(min, max));
    const spread = max - min;
    expect(min - value.min).toBeLessThan(0.01 * spread);
    expect(value.max - max).toBeLessThan(0.01 * spread);
  });

  test("costs little even where inputs pull both ways", () => {
    const many: Record<string, string> = {};
    for (let i = 0; i < 20; i++) many[`x${i}`] = "0 ± 1";
    const text = Object.keys(many)
      .map((name) => `${name} * (1 - ${name})`)
      .join(" + ");
    const start = process.cpuUsage();
    const value = computed(text, many);
    expect(process.cpuUsage(start).user / 1000).toBeLessThan(2000);
    // The true ends are −40 and 5; what was left open is counted in.
    expect(value.min).toBeLessThanOrEqual(-40);
    expect(value.max).toBeGreaterThanOrEqual(5);
  });
});
