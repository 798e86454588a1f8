// The reference page of the command line, from the help texts.

/** @param help texts by topic, `kitquill` being the whole */
export function commandPage({ kitquill, ...topics }) {
  const parts = Object.entries(topics).map(
    ([name, text]) => `## kitquill ${name}\n\n${fenced(text)}`,
  );
  return `# The command line

What \`kitquill --help\` and \`kitquill COMMAND --help\` say. [Recipes](recipes.md) show the commands at work; [JSON and schemas](json.md) says what \`--format json\` writes, [Checking in CI](continuous-integration.md) what \`github\` and \`sarif\` are for.

${fenced(kitquill)}

${parts.join("\n\n")}

This page is written by \`npm run docs\`.
`;
}

function fenced(text) {
  return `\`\`\`text\n${text.trimEnd()}\n\`\`\``;
}
