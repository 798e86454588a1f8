// The reference page of the trade functions, from the registry: signature, units, range, source and
// one worked example each.
import { formatResult } from "./formatResult.mjs";

export function functionsPage(groups) {
  const parts = groups.map(({ title, functions }) => {
    const entries = functions.map(entry);
    return `## ${title}\n\n${entries.join("\n\n")}`;
  });
  return `# Trade functions

Figures may use these functions: \`{ripple(C1) = rippleVoltage(2 A; C1)}\`. Arguments are parted by semicolons; those with a value behind \`=\` may be left out. A unit stands for its kind: for m any length will do. Tolerances of the arguments carry on into the result. Outside its range of validity a function gives a warning.

${parts.join("\n\n")}

This page is written by \`npm run docs\`.
`;
}

function entry(one) {
  const lines = [
    `### ${one.name}`,
    `\`${signature(one)}\` gives ${one.unit === "1" ? "a number" : `a figure in ${one.unit}`}.`,
    one.summary,
    ["| Argument | Meaning | Unit |", "|---|---|---|", ...one.parameters.map(row)].join("\n"),
    `Holds for: ${one.range}`,
    `Source: ${one.source}.`,
    `Example: \`${one.example.written}\` is ${formatResult(one.compute(one.example.args), one.unit)}.`,
  ];
  return lines.join("\n\n");
}

function signature({ name, parameters }) {
  return `${name}(${parameters.map(parameterText).join("; ")})`;
}

function parameterText(parameter) {
  return parameter.default === undefined
    ? parameter.name
    : `${parameter.name} = ${defaultText(parameter)}`;
}

function defaultText({ default: standard, unit }) {
  if (typeof standard === "string") return standard;
  return formatResult(standard, unit);
}

function row({ name, meaning, unit, keys }) {
  const of = unit === "word" && keys.length > 3 ? `${meaning}: ${keys.join(", ")}` : meaning;
  return `| ${name} | ${of} | ${unit === "word" ? "a word" : unitName(unit)} |`;
}

function unitName(unit) {
  return unit === "1" ? "a number" : unit;
}
