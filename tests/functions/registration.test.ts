import { runInNewContext } from "node:vm";
import { gzipSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { metadata, registered, script } from "./built";

describe("the built functions.js", () => {
  it("registers exactly the functions of functions.json, evaluated alone", () => {
    const found: string[] = [];
    // A page that holds nothing else at all.
    runInNewContext(script, { CustomFunctions: { associate: (id: string) => found.push(id) } });
    expect(found.sort()).toEqual(metadata.functions.map(({ id }) => id).sort());
  });

  it("has every function of the released list: ids never change", () => {
    const released = `FILLWEIGHT WATERVOLUME FILLBYVOLUME VESSELVOLUME WAXFACTOR WAXFACTORSPREAD BLENDFACTOR
      SCENTSPLIT WAXPART SCENTPART LOADAS LOADFROM LOADCHECK RECIPESPLIT
      WEIGHOUT WEIGHERROR POTPLAN POTCOUNT MAKEABLE PACKPLAN PACKCOST UNITPRICE
      CANDLECOST ASKPRICE MARGINOF BREAKEVEN STOCKCOST BURNRATE BURNHOURS POOLHOURS FLAMECHECK POOLCHECK
      NETLABEL NETCHECK LOTCODE`.split(/\s+/);
    for (const id of released) expect(registered.has(id), id).toBe(true);
  });

  it("describes every function and every argument, and lets error cells through", () => {
    expect(metadata.allowErrorForDataTypeAny).toBe(true);
    for (const { id, description, helpUrl, parameters, result } of metadata.functions) {
      expect(description, id).toMatch(/\w/);
      expect(helpUrl, id).toBe(`https://localhost:3000/help/${id}.html`);
      expect(result.dimensionality, id).toBe("matrix");
      for (const parameter of parameters) expect(parameter.description, `${id} ${parameter.name}`).toMatch(/\w.{10}/);
    }
  });

  it("holds no library and no pane: it stays small", () => {
    expect(gzipSync(script).length).toBeLessThan(25_000);
    expect(script).not.toMatch(/react|univer|document\.|window\./i);
  });
});
