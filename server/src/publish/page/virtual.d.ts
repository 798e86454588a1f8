/** Made when the server is built, from the sources in `server/page/` (scripts/virtualModules.mjs). */
declare module "virtual:page" {
  /** The page's script, as text. */
  export const SCRIPT: string;
  /** Its hash for a content security policy: `sha256-…`. */
  export const SCRIPT_HASH: string;
  /** The page's style sheet. */
  export const STYLE: string;
}
