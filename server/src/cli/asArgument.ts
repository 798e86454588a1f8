/** A file's name as it must be typed in a command that a message suggests. */

/** In quotation marks where a shell would part it or read a meaning into it. */
export function asArgument(name: string): string {
  if (!/[\s"'`$&();<>|*?!#[\]{}]/.test(name)) return name;
  return `"${name.replace(/["`$]/g, "\\$&")}"`;
}
