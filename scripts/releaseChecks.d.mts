export function manifestFaults(manifest: object, isThere: (path: string) => boolean): string[];
export function ownersFaults(manifest: object): string[];
export function iconFaults(png: Buffer): string[];
export function changeLogFaults(text: string, version: string): string[];
export function lockFaults(lock: object, version: string): string[];
export function licenceFaults(
  list: string,
  packages: readonly { name: string; version: string; license?: string | undefined }[],
): string[];
