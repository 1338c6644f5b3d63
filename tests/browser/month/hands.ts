import type { Locator } from "playwright-core";
import { expect } from "vitest";
import { columnLetters } from "../../../src/sheet/columnLetters";
import type { TryoutPage } from "../page";
import type { Receipt } from "./month";

/** What a maker does in the page, whatever the month. */
export function hands(tryout: TryoutPage) {
  const pane = (): Locator => tryout.page.locator(".pourwright-pane");
  const press = (name: string) => tryout.press(name);
  const says = (text: string | RegExp) => pane().getByText(text).first().waitFor();
  const tab = (name: string) => tryout.page.getByRole("tab", { name, exact: true }).waitFor();
  const setting = async (label: string, text: string) => {
    await tryout.openSettings();
    await pane().locator(".settings").getByLabel(label, { exact: true }).fill(text);
  };
  const choose = async (label: string, value: string) => {
    await tryout.openSettings();
    await pane().locator(".settings").getByLabel(label, { exact: true }).selectOption(value);
  };
  const receiving = (label: string) =>
    pane().getByRole("region", { name: "Receiving" }).getByLabel(label, { exact: true });
  /** Writes under these headings, from a row of the sheet on, beside what other columns hold. */
  const fillIn = async (table: string, row: number, rows: readonly Readonly<Record<string, string | number>>[]) => {
    await tryout.openSheet(table);
    const { headings } = await tryout.table(table);
    const named = Object.keys(rows[0] ?? {});
    const columnOf = (name: string) => headings.findIndex((heading) => heading.startsWith(name));
    for (const [i, name] of named.entries()) {
      expect(columnOf(name), name).toBeGreaterThanOrEqual(0);
      // Neighbours go together.
      if (i > 0 && columnOf(named[i - 1] as string) === columnOf(name) - 1) continue;
      const group = named.filter((one, o) => o >= i && columnOf(one) - columnOf(name) === o - i);
      await tryout.paste(
        `${columnLetters(columnOf(name))}${row}`,
        rows.map((one) => group.map((key) => one[key] ?? "")),
      );
    }
  };
  const rowsOf = async (table: string, headings: readonly string[]) => {
    const { headings: known, rows } = await tryout.table(table);
    return rows.map((row) => headings.map((heading) => row[known.findIndex((one) => one.startsWith(heading))] ?? null));
  };

  async function receive({ date, item, lot, paid }: Receipt, quantity: string, unit: string): Promise<void> {
    await tryout.openView("Stock");
    await receiving("Item").fill(item);
    await receiving("Lot").fill(lot);
    await receiving("Quantity").fill(quantity);
    await receiving("Unit").selectOption(unit);
    await receiving("Received").fill(new Date((date - 25_569) * 86_400_000).toISOString().slice(0, 10));
    await receiving("Paid for all of it").fill(String(paid));
    await press("Add to moves");
    await says(new RegExp(`^${item}, lot ${lot}: .* is in Moves now`));
  }

  return { pane, press, says, tab, setting, choose, fillIn, rowsOf, receive };
}

export type Hands = ReturnType<typeof hands>;
