/** What a TypeScript module says in words, in the order of its source, each once. */
export function sayingsIn(source: string): Promise<string[]>;
