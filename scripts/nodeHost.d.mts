export const ENTRY: string;
export function setUpNodeHost(): Promise<void>;
