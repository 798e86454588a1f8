// The reference page of the settings, from the manifest.

/** @param properties `contributes.configuration.properties` */
export function settingsPage(properties) {
  const parts = Object.entries(properties).map(([name, setting]) => entry(name, setting));
  return `# Settings

In VS Code they are in the settings under *Kitquill*; other editors send them as the section \`kitquill\` ([Kitquill in other editors](other-editors.md)). What a guide says in its front matter comes before them, and the command line has [options of its own](command.md).

${parts.join("\n\n")}

This page is written by \`npm run docs\`.
`;
}

function entry(name, setting) {
  const { description, markdownDescription } = setting;
  const lines = [
    `## ${name}`,
    markdownDescription ?? description,
    `Takes ${kindOf(setting)}${defaultOf(setting)}.`,
  ];
  if (setting.enumDescriptions) lines.push(choices(setting));
  if (name === "kitquill.checks")
    lines.push("The codes and their defaults are on the [page of the checks](checks/README.md).");
  else if (setting.properties) lines.push(keys(setting.properties));
  return lines.join("\n\n");
}

function kindOf({ type, enum: values, minimum, exclusiveMinimum, maximum, properties }) {
  if (values) return values.map((one) => `\`${one}\``).join(", ");
  if (properties) return "keys with values";
  const types = [type].flat();
  if (types.includes("boolean")) return "`true` or `false`";
  const limits = [
    minimum !== undefined && `from ${minimum}`,
    exclusiveMinimum !== undefined && `above ${exclusiveMinimum}`,
    maximum !== undefined && `up to ${maximum}`,
  ].filter(Boolean);
  const number = limits.length > 0 ? `a number ${limits.join(" and ")}` : "a number";
  return types.includes("null") ? `${number}, or nothing` : number;
}

function defaultOf({ default: standard }) {
  const isPlain = standard !== null && typeof standard !== "object" && standard !== undefined;
  return isPlain ? `; \`${standard}\` if it is left out` : "";
}

function choices({ enum: values, enumDescriptions }) {
  return values.map((one, index) => `- \`${one}\`: ${enumDescriptions[index]}`).join("\n");
}

function keys(properties) {
  const rows = Object.entries(properties).map(
    ([name, one]) => `| \`${name}\` | ${one.description} | ${one.default} |`,
  );
  return ["| Key | Meaning | Default |", "|---|---|---|", ...rows].join("\n");
}
