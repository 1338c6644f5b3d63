import { ICommandService, IUniverInstanceService, type Workbook } from "@univerjs/core";
import { afterAll, beforeAll, expect } from "vitest";
import type { Book } from "../../../src/file/book";
import { toUniver } from "../../../src/host/univer/file/toUniver";
import { UniverInNode } from "./univerInNode";

/** Workbooks of files in one Univer, which is there while the tests around this call run. */
export function openedBooks() {
  let univer: UniverInNode;
  let ids = 0;
  beforeAll(() => {
    univer = new UniverInNode();
  });
  afterAll(() => univer.dispose());
  return {
    /** Of the Univer that is there once the tests run. */
    get univer(): UniverInNode {
      return univer;
    },
    /** Opens a workbook under an id of its own, as the one that is worked on. */
    async open(book: Book): Promise<Workbook> {
      const workbook = await univer.open(toUniver(book, `book${ids++}`));
      univer.injector.get(IUniverInstanceService).focusUnit(workbook.getUnitId());
      return workbook;
    },
    /** Does something that must succeed, on the first sheet where it names none. */
    async does(workbook: Workbook, id: string, params: object = {}): Promise<void> {
      const place = { unitId: workbook.getUnitId(), subUnitId: workbook.getSheetByIndex(0)?.getSheetId() };
      expect(await univer.injector.get(ICommandService).executeCommand(id, { ...place, ...params })).toBe(true);
      await univer.settled();
    },
  };
}
