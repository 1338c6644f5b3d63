import { describe, expect, it } from "vitest";
import { newLoss } from "../../../src/runsheet/record/newLoss";
import { readLog } from "./logs";

/** A log of pours that show these losses, each of a pot with two vessels. */
const log = (...losses: number[]) =>
  readLog({
    headings: ["Lot", "Vessel", "Candles", "Pots", "Loss shown"],
    rows: losses.flatMap((loss, i) =>
      ["Tin", "Bowl"].map((vessel) => [`2026-330-0${i + 1}`, vessel, 6, "Cedar: pot 1 of 1", loss]),
    ),
  });

describe("the loss that the log shows", () => {
  it("is offered from one pour with a word on it, a pot of two vessels counting once", () => {
    expect(newLoss(log(0.024), 0.03)).toEqual({
      says: "2.4 %, from one pour: how sure is not known; pour once more",
      offer: 0.024,
    });
  });

  it("takes no figure that a spreadsheet does not keep, and names no lot where none stands", () => {
    expect(newLoss(log(-1.7e308), 0.03)).toBeUndefined();
    const named = readLog({ headings: ["Lot", "Vessel", "Loss shown"], rows: [[{ error: "#N/A" }, "Tin", 0.9]] });
    expect(newLoss(named, 0.03)?.says).toBe("left out: 90 %, a slip is more likely");
  });

  it("is the mean of several once it is known to two points", () => {
    // Three pours m - d, m, m + d: deviation d; t(2) = 4.302653 (Student's t, 95 %). 4.302653 x d / sqrt(3) is 0.02
    // at d = 0.0080511.
    expect(newLoss(log(0.04 - 0.00805, 0.04, 0.04 + 0.00805), 0.03)).toEqual({
      says: "4 % ± 2 % (95 %), from 3 pours",
      offer: 0.04,
    });
    expect(newLoss(log(0.04 - 0.0081, 0.04, 0.04 + 0.0081), 0.03)).toEqual({
      says: "4 % ± 2 % (95 %), from 3 pours: not sure enough yet, ± 2 % is wanted; pour once more",
      offer: undefined,
    });
  });

  it("is nothing where nothing is new, and never what no pour makes", () => {
    expect(newLoss(log(0.0301), 0.03)).toBeUndefined();
    expect(newLoss(log(), 0.03)).toBeUndefined();
    expect(newLoss(log(-0.096), 0.03)).toEqual({
      says: "left out: -9.6 % in 2026-330-01, a slip is more likely",
      offer: undefined,
    });
    expect(newLoss(log(0.05, 0.6), 0.03)?.says).toBe(
      "5 %, from one pour: how sure is not known; pour once more; left out: 60 % in 2026-330-02, a slip is more likely",
    );
    // A setting that is wrong at the moment is not written over.
    expect(newLoss(log(0.05), undefined)?.offer).toBeUndefined();
  });
});
