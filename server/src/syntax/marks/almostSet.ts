/** Sets in other words than `all … except …` and `rest of …`: how the mark writes them. */

const WORDS = String.raw`(?:the\s+)?`;
const REST = new RegExp(
  `^(?:${WORDS}(?:rest|remainder)(?:\\s+of)?(?:\\s+the)?|${WORDS}(?:remaining|other)|all\\s+(?:other|remaining))\\s+(?=\\S)`,
  "i",
);
const ALL = /^(?:all|every|each)\s+(?:the\s+|of\s+)?(?=\S)/i;
const EXCEPT =
  /\s+(?:except(?:ing)?(?:\s+for)?|but(?:\s+not)?|without|excluding|other\s+than|apart\s+from|außer|ohne|sauf|behalve|zonder|excepto|salvo)\s+/i;

/** `rest of R except R1` for `remaining R but R1`; undefined for a text that has none of the words. */
export function usualSetWords(text: string): string | undefined {
  const which = REST.test(text) ? "rest of" : ALL.test(text) ? "all" : undefined;
  if (!which) return undefined;
  const usual = `${which} ${text.replace(which === "all" ? ALL : REST, "")}`.replace(
    EXCEPT,
    " except ",
  );
  return usual === text ? undefined : usual;
}
