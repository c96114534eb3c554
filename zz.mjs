import { runnerImport } from "vite";
import { writeFileSync } from "node:fs";
const { module } = await runnerImport("/work/main/scripts/samples/sweeper/scan.ts",{configFile:false});
const { module:m2 } = await runnerImport("/work/main/scripts/samples/ageing/age.ts",{configFile:false});
const t=performance.now(); const b=module.sweeperScan(m2.AGED); console.log(b.length/1024, performance.now()-t);
writeFileSync("/tmp/samples/scan.jpg", b);
