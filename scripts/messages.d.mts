/** All messages by heading, then by check or file. */
export function collectMessages(): Promise<Map<string, Map<string, string[]>>>;
