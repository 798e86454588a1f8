/** The script of a published page. Without it the page still reads, prints, and is ticked by pen. */
import { followReadings } from "./readings.ts";
import { Store } from "./store.ts";
import { followTicks } from "./ticks.ts";
import type { Words } from "./words.ts";
import { followWorksheets } from "./worksheets.ts";

const { guide, words } = document.body.dataset;
const store = new Store(guide!);
const said: Words = JSON.parse(words!);
followTicks(store);
followReadings(store, said);
followWorksheets(store, said);
