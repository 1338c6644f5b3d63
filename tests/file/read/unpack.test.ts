import { readFileSync } from "node:fs";
import { strFromU8, unzipSync, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { FileRefused } from "../../../src/file/refused";
import { crc32 } from "../../../src/file/zip/crc32";
import { contentTypes, relationships, resolveTarget, workbookPath } from "../../../src/file/zip/package";
import { unpack } from "../../../src/file/zip/unpack";
import { type RawEntry, rawZip } from "../rawZip";

const sample = new Uint8Array(readFileSync(new URL("../../../sample-workbooks/1-studio.xlsx", import.meta.url)));

const refusal = (bytes: Uint8Array): string => {
  try {
    unpack(bytes);
  } catch (error) {
    if (error instanceof FileRefused) return error.message;
    throw error;
  }
  return "opened";
};

describe("unpacking", () => {
  it("has the check value of the standard's own example", () => {
    // Source: the catalogue of parametrised CRC algorithms, CRC-32/ISO-HDLC, check = 0xcbf43926.
    expect(crc32(new TextEncoder().encode("123456789"))).toBe(0xcbf43926);
  });

  it("gives what fflate's own unpacking gives, in the order of the file", () => {
    const expected = unzipSync(sample);
    const { parts } = unpack(sample);
    expect([...parts.keys()]).toEqual(Object.keys(expected).filter((path) => !path.endsWith("/")));
    for (const [path, bytes] of parts) expect(bytes).toEqual(expected[path]);
  });

  it("reads stored and packed parts, names outside ASCII, empty parts", () => {
    const zip = zipSync({
      "a.txt": [new Uint8Array([1, 2]), { level: 0 }],
      "größe.txt": new Uint8Array([3]),
      e: new Uint8Array(),
    });
    expect([...unpack(zip).parts]).toEqual([
      ["a.txt", new Uint8Array([1, 2])],
      ["größe.txt", new Uint8Array([3])],
      ["e", new Uint8Array()],
    ]);
  });

  const one: RawEntry = { path: "a.txt", content: "x".repeat(100) };
  it.each<[string, Uint8Array, RegExp]>([
    [
      "one that says it is huge",
      rawZip([{ ...one, content: "x".repeat(900_000), size: 600_000_000 }]),
      /600 MB.*500 MB/,
    ],
    [
      "many that are huge together",
      rawZip(
        Array.from({ length: 6 }, (_, i) => ({ path: `${i}`, content: new Uint8Array(100_000), size: 99_000_000 })),
      ),
      /594 MB/,
    ],
    [
      "one that holds more than it says",
      rawZip([{ ...one, content: new Uint8Array(50_000_000), size: 10 }]),
      /more than it says/,
    ],
    ["one that cannot be so large", rawZip([{ ...one, size: 400_000_000 }]), /larger than it can be/],
    ["one that holds less", rawZip([{ ...one, size: 101 }]), /breaks off/],
    ["changed bytes", rawZip([{ ...one, crc: 1 }]), /changed bytes/],
    ["a password", rawZip([{ ...one, flags: 0x801 }]), /password/],
    ["another way of packing", rawZip([{ ...one, method: 12 }]), /packed in a way/],
    ["a way out", rawZip([{ ...one, path: "xl/../../a" }]), /name that no workbook has/],
    ["a path from the top", rawZip([{ ...one, path: "/etc/a" }]), /name that no workbook has/],
    ["a drive", rawZip([{ ...one, path: "C:/a" }]), /name that no workbook has/],
    ["backslashes", rawZip([{ ...one, path: "xl\\a" }]), /name that no workbook has/],
    ["an empty step", rawZip([{ ...one, path: "xl//a" }]), /name that no workbook has/],
    ["the same name twice", rawZip([one, { ...one, path: "A.TXT" }]), /two parts of one name/],
    ["a zip that is cut", sample.subarray(0, sample.length - 30), /end is missing/],
    ["nothing", new Uint8Array(), /end is missing/],
  ])("refuses %s", (_, bytes, message) => {
    const said = refusal(bytes);
    expect(said).toMatch(message);
    expect(said).toMatch(/^This file .*\.$/);
  });
});

describe("the package", () => {
  const pack = unpack(sample);

  it("finds the workbook and what belongs to it by relationships", () => {
    expect(workbookPath(pack)).toBe("xl/workbook.xml");
    const sheets = relationships(pack, "xl/workbook.xml").filter(({ kind }) => kind === "worksheet");
    expect(sheets.length).toBe(
      strFromU8(pack.parts.get("xl/workbook.xml") ?? new Uint8Array()).match(/<sheet /g)?.length,
    );
    for (const { target } of sheets) {
      expect(pack.parts.has(target)).toBe(true);
      expect(contentTypes(pack)(target)).toContain("worksheet+xml");
    }
  });

  it.each([
    ["xl/workbook.xml", "worksheets/sheet1.xml", "xl/worksheets/sheet1.xml"],
    ["xl/worksheets/sheet1.xml", "../drawings/drawing1.xml", "xl/drawings/drawing1.xml"],
    ["xl/workbook.xml", "/xl/styles.xml", "xl/styles.xml"],
    ["", "xl/workbook.xml", "xl/workbook.xml"],
    ["a.xml", "../../x", "x"],
  ])("resolves from %s the target %s", (from, target, path) => expect(resolveTarget(from, target)).toBe(path));
});
