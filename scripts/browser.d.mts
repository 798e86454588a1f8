/** Path of the browser, or undefined when there is none. */
export function findBrowser(): string | undefined;
