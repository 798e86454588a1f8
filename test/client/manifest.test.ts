/** What the extension tells the editor of itself. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";

const { capabilities, contributes } = JSON.parse(
  readFileSync(join(import.meta.dirname, "../../package.json"), "utf8"),
);
const { commands, menus, keybindings, walkthroughs } = contributes;
const settings: Readonly<Record<string, Setting>> = contributes.configuration.properties;

interface Setting {
  readonly scope?: string;
  readonly description?: string;
  readonly markdownDescription?: string;
  readonly enum?: readonly string[];
  readonly enumDescriptions?: readonly string[];
  readonly properties?: Readonly<Record<string, Setting>>;
}

/** These ask for whatever they need, or need nothing. */
const ANYWHERE = [
  "kitquill.startGuide",
  "kitquill.compareLists",
  "kitquill.restartServer",
  "kitquill.showLog",
];

test("a folder that is not trusted cannot have files outside it read", () => {
  const { supported, restrictedConfigurations } = capabilities.untrustedWorkspaces;
  expect(restrictedConfigurations).toContain("kitquill.listsOutsideWorkspace");
  // The editor heeds the restrictions of a limited extension only.
  expect(supported).toBe("limited");
});

test("commands stand under one category, and only where they can do something", () => {
  for (const { category, title } of commands) {
    expect(category).toBe("Kitquill");
    expect(title).toMatch(/^[A-Z]/);
  }
  const limited = menus.commandPalette.map(({ command }: { command: string }) => command);
  const all = commands.map(({ command }: { command: string }) => command);
  expect([...limited, ...ANYWHERE].sort()).toEqual(all.sort());
  const places: { command: string; when?: string }[] = Object.values(menus).flat() as never;
  for (const { command, when } of places) {
    expect(all).toContain(command);
    expect(when, command).toBeTruthy();
  }
});

test("keys are bound for the preview alone", () => {
  expect(keybindings.map(({ command }: { command: string }) => command)).toEqual([
    "kitquill.openPreview",
  ]);
});

test("each setting says what it is for, its choices too, and how far it reaches", () => {
  for (const [name, setting] of Object.entries(settings)) {
    expect(setting.scope, name).toBeTruthy();
    for (const [key, one] of [[name, setting], ...Object.entries(setting.properties ?? {})] as [
      string,
      Setting,
    ][]) {
      expect(one.description ?? one.markdownDescription, key).toBeTruthy();
      // Signs of Markdown would be shown as they are.
      expect(one.description ?? "", key).not.toMatch(/[`*]/);
    }
    if (setting.enumDescriptions)
      expect(setting.enumDescriptions.length).toBe(setting.enum!.length);
  }
  const ofChecks = settings["kitquill.checks"]!;
  expect(ofChecks.scope).toBe("resource");
  for (const one of Object.values(ofChecks.properties!)) expect(one.enum).toContain("off");
});

test("the walkthrough leads by commands and views that there are", () => {
  const all = commands.map(({ command }: { command: string }) => command);
  const views = contributes.views.kitquill.map(({ id }: { id: string }) => `${id}.focus`);
  const welcome = contributes.viewsWelcome.map(({ contents }: { contents: string }) => contents);
  const steps = walkthroughs[0].steps.map(
    ({ description }: { description: string }) => description,
  );
  const links = [...[...welcome, ...steps].join().matchAll(/\(command:(kitquill\.[\w.]+)/g)];
  expect(links.length).toBeGreaterThan(4);
  for (const [, command] of links) expect([...all, ...views]).toContain(command);
  expect(welcome.join()).toContain(`kitquill.kitquill%23${walkthroughs[0].id}`);
});
