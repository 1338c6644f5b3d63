import * as core from "@univerjs/core";
import { expect, it } from "vitest";
import * as codes from "../../../src/host/univer/file/codes";

it("Univer's numbers are those that its own lists give", () => {
  const { CellValueType, HorizontalAlign, VerticalAlign, BorderStyleTypes } = core;
  expect(Object.values(codes.VALUE_TYPE)).toEqual([
    CellValueType.STRING,
    CellValueType.NUMBER,
    CellValueType.BOOLEAN,
    CellValueType.FORCE_STRING,
  ]);
  const { LEFT, CENTER, RIGHT, JUSTIFIED, DISTRIBUTED } = HorizontalAlign;
  expect(Object.values(codes.HORIZONTAL)).toEqual([LEFT, CENTER, RIGHT, JUSTIFIED, DISTRIBUTED]);
  expect(Object.values(codes.VERTICAL)).toEqual([VerticalAlign.TOP, VerticalAlign.MIDDLE, VerticalAlign.BOTTOM]);
  for (const [name, code] of Object.entries(codes.BORDERS)) {
    // mediumDashDot is MEDIUM_DASH_DOT there.
    expect(BorderStyleTypes[code]).toBe(name.replace(/[A-Z]/g, "_$&").toUpperCase());
  }
  expect([codes.YES, codes.NO]).toEqual([core.BooleanNumber.TRUE, core.BooleanNumber.FALSE]);
  expect([codes.WRAPS, codes.ON_THE_LINE]).toEqual([core.WrapStrategy.WRAP, core.BaselineOffset.NORMAL]);
  expect(Object.values(codes.UNDERLINE)).toEqual([core.TextDecoration.DOUBLE, core.TextDecoration.SINGLE]);
  expect(Object.values(codes.RAISED)).toEqual([core.BaselineOffset.SUBSCRIPT, core.BaselineOffset.SUPERSCRIPT]);
  expect(codes.HYPERLINK).toBe(core.CustomRangeType.HYPERLINK);
  expect(codes.ARROW).toBe(core.DataValidationRenderMode.ARROW);
  expect(codes.EN_US).toBe(core.LocaleType.EN_US);
});
