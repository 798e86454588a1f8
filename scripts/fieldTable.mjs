// The fields of a published guide as one table, from its schema. `parts[].name` is the field `name` of
// each entry of the list `parts`.

/** @param schema guide.schema.json */
export function fieldTable(schema) {
  return ["| Field | Is | Meaning |", "|---|---|---|", ...rowsOf(schema, "")].join("\n");
}

function rowsOf({ properties = {} }, before) {
  return Object.entries(properties).flatMap(([name, field]) => [
    `| \`${before}${name}\` | ${kindOf(field)} | ${field.description ?? ""} |`,
    ...(field.items ? rowsOf(field.items, `${before}${name}[].`) : []),
    ...(field.oneOf ?? []).flatMap((one) => rowsOf(one, `${before}${name}.`)),
  ]);
}

function kindOf({ type, const: fixed, enum: values, items, oneOf }) {
  if (fixed !== undefined) return `\`${JSON.stringify(fixed)}\``;
  if (values) return values.map((one) => `\`${one}\``).join(", ");
  if (oneOf) return oneOf.map(kindOf).join(" or ");
  const names = [type].flat();
  if (!names.includes("array")) return names.join(" or ");
  return items?.type === "object"
    ? "list of objects"
    : `list of ${[items.type].flat().join(" or ")}s`;
}
