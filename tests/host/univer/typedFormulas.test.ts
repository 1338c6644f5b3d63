import { type ICellData, LocaleService } from "@univerjs/core";
import { LexerTreeBuilder } from "@univerjs/engine-formula";
import { EditingRenderController, SheetInterceptorService } from "@univerjs/preset-sheets-core";
import { beforeAll, describe, expect, it } from "vitest";
import "../../../src/host/univer/editing/typedFormulas";
import { Headless } from "./headless";

describe("a typed formula", () => {
  let page: Headless;
  beforeAll(() => {
    page = new Headless([{ name: "Jars", widths: [], cells: [] }]);
  });

  /** What the editor makes of something typed into A1. */
  async function stored(typed: string): Promise<ICellData> {
    let written: ICellData = {};
    const { injector, workbook } = page;
    const { unitId, subUnitId: sheetId } = page.ids;
    const editor = Object.assign(Object.create(EditingRenderController.prototype), {
      _editorBridgeService: { getEditCellState: () => ({ unitId, sheetId, row: 0, column: 0 }) },
      _univerInstanceService: { getUnit: () => workbook },
      _sheetInterceptorService: injector.get(SheetInterceptorService),
      _localService: injector.get(LocaleService),
      // The page describes them to Univer.
      _functionService: { getDescriptions: () => new Map(["IF", "SUM", "ROUND"].map((name) => [name, {}])) },
      _lexerTreeBuilder: injector.get(LexerTreeBuilder),
      _commandService: {
        syncExecuteCommand: (_: string, { value }: { value: ICellData }) => {
          written = value;
          return false;
        },
      },
    });
    await editor._submitEdit({ body: { dataStream: `${typed}\r\n` } });
    return written;
  }

  it.each([
    '=IF(0.50>1,"big","small")',
    '=IF(A50<1.0,"low","high")',
    '=IF(A50<.5,"low","high")',
    '=IF(A50>1e3,"a lot","a few")',
    '=IF(A50>1E+3,"a lot","a few")&"1.0"',
    '=IF(A50 < 1.0 , " low","high ")&" 50% "&50%',
    '=SUM({4.0,5.50;.5,6})&"g"',
    "='Jan''s 1.0 jars'!A1*1.0&\"g\"",
    '=IF(TRUE,1.0,"false")&"true"',
    "=Jars[Fill 1.0]*1.0",
    '=FILTER(A1:A9,A1:A9<>"",1.00)&"end"',
    '="1.0"&"2.0"',
  ])("%s is stored as it is", async (typed) => {
    expect((await stored(typed)).f).toBe(typed);
  });

  it.each([
    ['=if(a50<1.0,"low","high")', '=IF(A50<1.0,"low","high")'],
    ['=sum(a1:a9,1.0)&"a1 sum(1.0"&true', '=SUM(A1:A9,1.0)&"a1 sum(1.0"&TRUE'],
    ["=jars!a1*round(2.50,1", "=jars!A1*ROUND(2.50,1)"],
  ])("%s gets capitals and brackets alone", async (typed, f) => {
    expect((await stored(typed)).f).toBe(f);
  });

  it("leaves what is no formula to others", async () => {
    expect((await stored("1.0")).v).toBe("1.0");
    expect((await stored("low")).v).toBe("low");
  });
});
