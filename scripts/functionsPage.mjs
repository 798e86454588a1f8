// The reference page of the trade functions, from the registry: signature, units, range, source and
// one worked example each. `print` writes an amount with its unit.

export function functionsPage(groups, print) {
  const parts = groups.map(({ title, functions }) => {
    const entries = functions.map((one) => entry(one, print));
    return `## ${title}\n\n${entries.join("\n\n")}`;
  });
  return `# Trade functions

Figures may use these functions: \`{ripple(C1) = rippleVoltage(2 A; C1)}\`. Arguments are parted by semicolons; those with a value after \`=\` may be left out. A unit stands for its kind: for m any length will do. Tolerances of the arguments carry on into the result. Outside its range of validity a function gives a warning.

${parts.join("\n\n")}

This page is written by \`npm run docs\`.
`;
}

function entry(one, print) {
  const lines = [
    `### ${one.name}`,
    `\`${signature(one, print)}\` gives ${one.unit === "1" ? "a number" : `a figure in ${one.unit}`}.`,
    one.summary,
    ["| Argument | Meaning | Unit |", "|---|---|---|", ...one.parameters.map(row)].join("\n"),
    `Holds for: ${one.range}`,
    `Source: ${one.source}.`,
    `Example: \`${one.example.written}\` is ${print(one.compute(one.example.args), one.unit, 4)}.`,
  ];
  return lines.join("\n\n");
}

function signature({ name, parameters }, print) {
  return `${name}(${parameters.map((one) => parameterText(one, print)).join("; ")})`;
}

function parameterText(parameter, print) {
  return parameter.default === undefined
    ? parameter.name
    : `${parameter.name} = ${defaultText(parameter, print)}`;
}

function defaultText({ default: standard, unit }, print) {
  if (typeof standard === "string") return standard;
  if (standard === Number.POSITIVE_INFINITY) return "∞";
  return standard === 0 && unit !== "°C" ? "0" : print(standard, unit, 4);
}

function row({ name, meaning, unit, keys }) {
  const of = unit === "word" && keys.length > 3 ? `${meaning}: ${keys.join(", ")}` : meaning;
  return `| ${name} | ${of} | ${unit === "word" ? "a word" : unitName(unit)} |`;
}

function unitName(unit) {
  return unit === "1" ? "a number" : unit;
}
