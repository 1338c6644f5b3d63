import ExcelJS from "exceljs";
import { beforeAll, describe, expect, it } from "vitest";
import { openFile } from "../../src/file/openFile";
import { later } from "./later";
import { OpenedSite } from "./opened";

/** Files of the browser's own private disk stand for those of the maker's: no test can press the browser's dialogs. */
describe("a file at a place that the maker chose, in a browser", () => {
  const site = new OpenedSite();
  const tryout = site.page();
  const save = () => tryout.page.getByRole("button", { name: "Save", exact: true }).click();
  const dialog = () => tryout.page.getByRole("dialog");
  const said = () => tryout.page.locator(".files-said");

  /** The number in B2 of the file. */
  async function written(name: string): Promise<unknown> {
    const bytes = await later(
      tryout.page,
      async (file) => {
        const handle = await (await navigator.storage.getDirectory()).getFileHandle(file);
        return [...new Uint8Array(await (await handle.getFile()).arrayBuffer())];
      },
      name,
    );
    const sheet = openFile(new Uint8Array(bytes), name).book.sheets[0];
    return sheet?.rows.find(({ row }) => row === 1)?.cells.find(({ column }) => column === 1)?.value;
  }

  beforeAll(async () => {
    const book = new ExcelJS.Workbook();
    book.addWorksheet("Jars").addRows([
      ["Vessel", "Water"],
      ["Small tin", 100],
    ]);
    const bytes = [...Buffer.from(await book.xlsx.writeBuffer())];
    await later(
      tryout.page,
      async (first) => {
        const disk = await navigator.storage.getDirectory();
        const dropped = await disk.getFileHandle("dropped.xlsx", { create: true });
        const stream = await dropped.createWritable();
        await stream.write(new Uint8Array(first));
        await stream.close();
        Object.assign(DataTransferItem.prototype, { getAsFileSystemHandle: async () => dropped });
        Object.assign(window, {
          showSaveFilePicker: () => disk.getFileHandle("jars.xlsx", { create: true }),
        });
        const transfer = new DataTransfer();
        transfer.items.add(await dropped.getFile());
        const drop = new DragEvent("drop", { dataTransfer: transfer, bubbles: true, cancelable: true });
        document.querySelector("main")?.dispatchEvent(drop);
      },
      bytes,
    );
    await tryout.page.getByRole("tab", { name: "Jars", exact: true }).waitFor();
  });

  it("is the one that was dropped, written again after a press that names it", async () => {
    await tryout.type("B2", "110");
    await save();
    await dialog().getByRole("button", { name: "Save to dropped.xlsx" }).click();
    await tryout.page.getByText("Saved dropped.xlsx.").waitFor();
    expect(await written("dropped.xlsx")).toBe(110);
  });

  it("is another one when the maker says so, and the one to write from then on", async () => {
    await tryout.type("B2", "120");
    await save();
    await dialog().getByRole("button", { name: "Save as another file" }).click();
    await tryout.page.getByText("Saved jars.xlsx.").waitFor();
    expect([await written("jars.xlsx"), await written("dropped.xlsx")]).toEqual([120, 110]);
    await tryout.type("B2", "130");
    await save();
    await dialog().getByRole("button", { name: "Save to jars.xlsx" }).click();
    await tryout.page.getByText("Saved jars.xlsx.").waitFor();
    expect([await written("jars.xlsx"), await written("dropped.xlsx")]).toEqual([130, 110]);
  });

  it("stays as it was on a full disk, as does what is open; a sentence says what to do", async () => {
    await tryout.type("B2", "140");
    await tryout.page.evaluate(() => {
      const { write } = FileSystemWritableFileStream.prototype;
      FileSystemWritableFileStream.prototype.write = async () => {
        FileSystemWritableFileStream.prototype.write = write;
        throw new DOMException("full", "QuotaExceededError");
      };
    });
    await save();
    await dialog().getByRole("button", { name: "Save to jars.xlsx" }).click();
    await said().getByRole("alert").waitFor();
    expect(await said().textContent()).toBe(
      "jars.xlsx could not be written; it is as it was. The disk is full: make room on it, or save elsewhere.",
    );
    expect(await written("jars.xlsx")).toBe(130);
    expect(await tryout.cells("Jars", 1, 1)).toEqual([[140]]);
    await save();
    await dialog().getByRole("button", { name: "Save to jars.xlsx" }).click();
    await tryout.page.getByText("Saved jars.xlsx.").waitFor();
    expect(await written("jars.xlsx")).toBe(140);
  });
});
