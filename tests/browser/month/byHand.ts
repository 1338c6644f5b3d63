import { PlainSums } from "../plainSums";
import { costs } from "./costs";
import { upper } from "./formulas";
import type { Month } from "./month";
import { log, pots } from "./pours";
import { shop } from "./shop";
import { stock } from "./stock";

export const monthByHand = (month: Month): PlainSums =>
  new PlainSums({ ...typed(month), ...pots(month), ...log(month), ...stock(month), ...costs(month), ...shop(month) });

function typed({ studio, vessels, scents, receipts, runs }: Month) {
  return {
    Studio: {
      columns: {
        ...{ Loss: null, WaxFactor: null, LabourMinutes: null, LabourRate: null },
        Labour: "={LabourMinutes}/60*{LabourRate}",
      },
      rows: [upper(studio)],
    },
    Vessels: {
      // What wax weighs beside the water in its place.
      columns: { Vessel: null, Water: null, Wicks: null, Fill: "={Water}*Studio[WaxFactor]" },
      rows: vessels.map(upper),
    },
    Scents: { columns: { Scent: null, Load: null, Basis: null }, rows: scents.map(upper) },
    Runs: { columns: { Run: null, Date: null }, rows: runs.map(upper) },
    Receipts: {
      columns: { Date: null, Item: null, Lot: null, Quantity: null, Paid: null, Price: "={Paid}/{Quantity}" },
      rows: receipts.map(upper),
    },
  };
}
