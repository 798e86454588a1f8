/** What is set for a workspace, and for folders of it. */
import type { SeveritySettings } from "../checks/verdict.ts";
import type { GuideSettings } from "../model/guide.ts";
import { USUAL_STANDARD } from "../trade/hazards/voltageLimits.ts";
import { isInside } from "./paths.ts";

export interface ServiceSettings extends GuideSettings {
  /** Severity by check code; the guide's own `checks` key wins over it. */
  readonly checks: SeveritySettings;
  /** Folders whose files may be read; a list elsewhere is refused. Empty: the guide's own folder. */
  readonly folders: readonly string[];
  readonly listsOutsideWorkspace: boolean;
  /** Whether an editor shows value and height behind the parts of marks. */
  readonly partHints: boolean;
}

export const DEFAULT_SETTINGS: ServiceSettings = {
  heightTolerance: 1,
  limits: {},
  productStandard: USUAL_STANDARD,
  storedEnergy: 0.5,
  derating: { power: 60, voltage: 80 },
  checks: {},
  folders: [],
  listsOutsideWorkspace: false,
  partHints: false,
};

export class SettingsByFolder {
  readonly usual: ServiceSettings;
  readonly #ofFolders: ReadonlyMap<string, ServiceSettings>;

  /** `ofFolders` count for the guides in these folders, by URI; of several the innermost. */
  constructor(usual: ServiceSettings, ofFolders: ReadonlyMap<string, ServiceSettings> = new Map()) {
    this.usual = usual;
    this.#ofFolders = ofFolders;
  }

  /** Those that count for the file. */
  of(uri: string): ServiceSettings {
    const folders = [...this.#ofFolders.keys()].filter((folder) => isInside(uri, folder));
    const innermost = folders.sort((a, b) => b.length - a.length)[0];
    return (innermost && this.#ofFolders.get(innermost)) || this.usual;
  }
}
