/**
 * Numbers of cells as the author sees them, as far as that changes what is meant: `5%` is stored as
 * 0.05, `0603` as 603. Format codes after ECMA-376 Part 1, 18.8.30 and 18.8.31.
 */

/** Codes of the built-in formats that show anything but the plain number. */
const BUILT_IN: Readonly<Record<number, string>> = {
  9: "0%",
  10: "0.00%",
  14: "mm-dd-yy",
  15: "d-mmm-yy",
  16: "d-mmm",
  17: "mmm-yy",
  18: "h:mm AM/PM",
  19: "h:mm:ss AM/PM",
  20: "h:mm",
  21: "h:mm:ss",
  22: "m/d/yy h:mm",
  45: "mm:ss",
  46: "[h]:mm:ss",
  47: "mmss.0",
};

export function builtInFormat(id: number): string | undefined {
  return BUILT_IN[id];
}

/** The number in a format; without one, in at most 15 digits, as programs show it. */
export function showNumber(value: number, format: string | undefined, is1904 = false): string {
  if (format === undefined) return plain(value);
  const code = firstSection(format);
  const bare = code.replace(LITERALS, "").replace(/General/gi, "");
  if (/[ymdhs]/i.test(bare)) return date(value, is1904);
  const { before, behind } = literals(code);
  return before + (/%/.test(bare) ? `${plain(value * 100)}%` : padded(value, bare)) + behind;
}

/** `0000` shows leading zeros. */
function padded(value: number, code: string): string {
  const isCode = /^0{2,}$/.test(code.trim()) && value >= 0 && Number.isInteger(value);
  return isCode ? plain(value).padStart(code.trim().length, "0") : plain(value);
}

/** Quoted and escaped text, colours and conditions. */
const LITERALS = /"[^"]*"|\\.|\[[^\]]*\]|_./g;

/** Codes of negative numbers, zero and text follow behind semicolons. */
function firstSection(format: string): string {
  return /^(?:"[^"]*"|\\.|[^";])*/.exec(format)![0];
}

/** The text that a code puts round the number. */
function literals(code: string): { before: string; behind: string } {
  const number = /General|[0#?][0#?.,/ ]*(?:E[+-]0+)?%?/i;
  const spared = code.replace(LITERALS, (text) => "\0".repeat(text.length));
  const place = number.exec(spared);
  if (!place) return { before: "", behind: "" };
  const end = place.index + place[0].length;
  return { before: textIn(code.slice(0, place.index)), behind: textIn(code.slice(end)) };
}

function textIn(code: string): string {
  const parts = code.match(/"[^"]*"|\\./g) ?? [];
  return parts.map((part) => (part.startsWith('"') ? part.slice(1, -1) : part.slice(1))).join("");
}

function plain(value: number): string {
  return String(Number(value.toPrecision(15)));
}

/**
 * Days since the end of 1899 (or since 1904) as a date of ISO 8601. The day 1900-02-29, which the
 * count has and the calendar has not, is passed over.
 */
function date(serial: number, is1904: boolean): string {
  const days = Math.floor(serial);
  const sinceMarch1900 = days - (is1904 ? -1401 : days < 60 ? 60 : 61);
  // From 1 March on leap days come last: 153 days are five months (a common calendar method).
  const day = sinceMarch1900 + 693_960;
  const era = Math.floor(day / 146_097);
  const ofEra = day - era * 146_097;
  const year = Math.floor(
    (ofEra - Math.floor(ofEra / 1460) + Math.floor(ofEra / 36_524) - Math.floor(ofEra / 146_096)) /
      365,
  );
  const ofYear = ofEra - (365 * year + Math.floor(year / 4) - Math.floor(year / 100));
  const month = Math.floor((5 * ofYear + 2) / 153);
  const dayOfMonth = ofYear - Math.floor((153 * month + 2) / 5) + 1;
  const calendarMonth = month < 10 ? month + 3 : month - 9;
  const calendarYear = year + era * 400 + (calendarMonth <= 2 ? 1 : 0);
  const two = (number: number) => String(number).padStart(2, "0");
  return `${calendarYear}-${two(calendarMonth)}-${two(dayOfMonth)}`;
}
