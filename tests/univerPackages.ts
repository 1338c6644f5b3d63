import { createRequire } from "node:module";

const { devDependencies } = createRequire(import.meta.url)("../package.json") as {
  devDependencies: Record<string, string>;
};

const own = Object.keys(devDependencies).filter((name) => name.startsWith("@univerjs/"));
const texts = own.filter((name) => name.includes("/preset-")).map((name) => `${name}/locales/en-US`);

/** What tests take from the packages that the presets are made of. */
const behind = ["conditional-formatting", "data-validation", "filter", "hyper-link", "note"].map(
  (name) => `@univerjs/sheets-${name}`,
);

/**
 * Makes Univer's packages scripts that Node reads itself, once for all workers: taken apart by the test runner as our
 * own files are, they would take each worker several seconds.
 */
export const univerPackages = {
  enabled: true,
  include: [
    // Of two ways in the optimizer takes the modules, whose circle Node does not load.
    "hyperformula",
    ...own,
    ...texts,
    ...behind,
    "@univerjs/core/facade",
    "@univerjs/engine-render",
    "@univerjs/sheets-formula/locale/en-US",
  ],
  rolldownOptions: {
    output: {
      // In a file that no test asks for by name: the packages ask for it by another address, and it would be there twice.
      codeSplitting: { groups: [{ name: "facade", test: /@univerjs.core.lib.es.facade/ }] },
    },
  },
};
