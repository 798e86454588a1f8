/** Made when the server is built, from `server/docs/checks/` (scripts/virtualModules.mjs). */
declare module "virtual:check-pages" {
  /** The page of each check by its code, as Markdown. */
  export const PAGES: Readonly<Record<string, string>>;
}
