import { expect, it } from "vitest";
import { withAttributes } from "../../../src/file/write/rawXml";

it("changes the attribute itself, not what reads like one within another's value", () => {
  const column = `<tableColumn id="1" name="say totalsRowLabel='x'" totalsRowLabel="Sum"/>`;
  expect(withAttributes(column, { totalsRowLabel: "All" })).toBe(
    `<tableColumn id="1" name="say totalsRowLabel='x'" totalsRowLabel="All"/>`,
  );
  expect(withAttributes(column, { totalsRowLabel: null })).toBe(`<tableColumn id="1" name="say totalsRowLabel='x'"/>`);
  expect(withAttributes('<a b="1"/>', { c: 'x & "y"' })).toBe('<a b="1" c="x &amp; &quot;y&quot;"/>');
});
