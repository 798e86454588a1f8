// A figure with its unit as the reference page shows it: four figures, prefixes by thousands.
const PREFIXES = [
  ["T", 12],
  ["G", 9],
  ["M", 6],
  ["k", 3],
  ["", 0],
  ["m", -3],
  ["µ", -6],
  ["n", -9],
  ["p", -12],
];
const PREFIXED = new Set(["V", "A", "Ω", "F", "H", "W", "J", "s", "m", "Hz", "N", "N·m"]);

export function formatResult(amount, unit) {
  const symbol = unit === "1" ? "" : ` ${unit}`;
  if (amount === Number.POSITIVE_INFINITY) return `∞${symbol}`;
  if (amount === 0 || !PREFIXED.has(unit)) return `${rounded(amount)}${symbol}`;
  // Workshops think in millimetres.
  if (unit === "m" && Math.abs(amount) < 1) return `${rounded(amount * 1000)} mm`;
  const size = Math.abs(amount) * (1 + 1e-9);
  const [prefix, exponent] = PREFIXES.find(([, power]) => size >= 10 ** power) ?? PREFIXES.at(-1);
  return `${rounded(amount / 10 ** exponent)} ${prefix}${unit}`;
}

function rounded(amount) {
  return String(Number(amount.toPrecision(4))).replace("-", "−");
}
