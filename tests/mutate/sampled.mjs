import { createHash } from "node:crypto";

const [every, seed] = (process.env.POURWRIGHT_SAMPLE ?? "1 0").split(" ").map(Number);

/** Whether a change belongs to the sample: by chance, but the same for the same seed and the same sources. */
function isDrawn({ fileName, location: { start, end }, replacement }) {
  const file = fileName.slice(fileName.lastIndexOf("/src/"));
  const text = JSON.stringify([seed, file, start.line, start.column, end.line, end.column, replacement]);
  return createHash("sha256").update(text).digest().readUInt32BE() % every === 0;
}

/** To Stryker a checker that finds what was not drawn to be no program: it is not run, and does not count. */
class Sampled {
  async init() {}

  async check(mutants) {
    const answers = mutants.map((one) => [one.id, { status: isDrawn(one) ? "passed" : "compileError", reason: "" }]);
    return Object.fromEntries(answers);
  }

  async group(mutants) {
    return [mutants.map(({ id }) => id)];
  }
}

export const strykerPlugins = [{ kind: "Checker", name: "sampled", injectableClass: Sampled }];
