/** Times as the comment `<!-- takes 1 h 30 min -->` gives them: hours, minutes, seconds, in that order. */

const TIME =
  /^(?:(?<h>\d{1,4}(?:[.,]\d{1,3})?) ?h)?(?: ?(?<min>\d{1,4}(?:[.,]\d{1,3})?) ?min)?(?: ?(?<s>\d{1,5}(?:[.,]\d{1,3})?) ?s)?$/;

/** Seconds, above nought; undefined for any other text. */
export function readTime(text: string): number | undefined {
  const { h, min, s } = TIME.exec(text)?.groups ?? {};
  const seconds = amount(h) * 3600 + amount(min) * 60 + amount(s);
  return seconds > 0 ? seconds : undefined;
}

function amount(digits: string | undefined): number {
  return Number((digits ?? "0").replace(",", "."));
}

/** The time as it should stand, where other words for its units are all that is wrong: `5 minutes`. */
export function mendedTime(text: string): string | undefined {
  const mended = text
    .toLowerCase()
    .replace(/(\d) ?(?:hours?|hrs?)\b/g, "$1 h")
    .replace(/(\d) ?(?:minutes?|mins)\b/g, "$1 min")
    .replace(/(\d) ?(?:seconds?|secs?)\b/g, "$1 s")
    .replace(/ and (?=\d)/g, " ");
  return readTime(mended) === undefined ? undefined : mended;
}
