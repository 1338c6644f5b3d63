import { fileURLToPath } from "node:url";
import { requireCurrent } from "../src/build/stamp";

/** The built site. A test of one that was built from other sources would tell nothing, so it fails at once. */
export const dist = new URL("../dist/", import.meta.url);

requireCurrent(fileURLToPath(dist));
