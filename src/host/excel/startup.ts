/**
 * Waits for Office, and asks Excel to load the add-in whenever this workbook is opened from now on: else its
 * formulas would show old results until somebody opens the pane.
 * @returns whether this page runs inside Excel
 */
export async function startUp(): Promise<boolean> {
  const { host } = await Office.onReady();
  if (host !== Office.HostType.Excel) return false;
  // Where Excel refuses (a workbook open for reading only), the functions still load with the pane.
  await Office.addin.setStartupBehavior(Office.StartupBehavior.load).catch(() => {});
  return true;
}
