/** Why the system refused to write a file or folder, in words. */

const WORDS: Readonly<Record<string, string>> = {
  EACCES: "permission is denied",
  EPERM: "permission is denied",
  EROFS: "it lies on a medium that can only be read",
  ENOSPC: "there is no room left",
  EDQUOT: "there is no room left",
  ENOENT: "its folder is not there",
  EEXIST: "a file of that name is in the way",
  ENOTDIR: "a file is in the way where a folder should be",
  ELOOP: "it is a link that leads back to itself",
  ENAMETOOLONG: "its path is longer than the system allows",
  EBUSY: "it is held by another program",
};

/** Undefined for what is no error of the system. */
export function refusal(error: unknown): string | undefined {
  if (!(error instanceof Error) || !("code" in error) || !("syscall" in error)) return undefined;
  const code = String(error.code);
  return WORDS[code] ?? `the system says ${code}`;
}
