// Loaded into a process that is measured (`node --import`): tells on descriptor 3 its peak memory in kB
// and the processor's time that it took in ms.
import { writeSync } from "node:fs";

process.on("exit", () => {
  const { maxRSS, userCPUTime, systemCPUTime } = process.resourceUsage();
  writeSync(3, `${maxRSS} ${(userCPUTime + systemCPUTime) / 1000}`);
});
