/** Writes the sample workbooks; run it with `npm run samples`, which builds the functions first. */

import { readFile, writeFile } from "node:fs/promises";
import { makeSample } from "./file/makeSample";
import { SAMPLES } from "./index";

const home = new URL("../../", import.meta.url);
const functions = {
  script: await readFile(new URL("dist/functions.js", home), "utf8"),
  metadata: await readFile(new URL("dist/functions.json", home), "utf8"),
};

for (const sample of SAMPLES) {
  await writeFile(new URL(`sample-workbooks/${sample.file}`, home), await makeSample(sample, functions));
  console.log(`sample-workbooks/${sample.file}`);
}
