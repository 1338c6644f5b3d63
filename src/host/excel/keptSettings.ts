import { DamagedSettings } from "../host";
import { DAMAGED, SETTINGS } from "../settingsKeys";

/** Settings go into the file and must stay small beside it. */
const LONGEST_SETTINGS = 1_000_000;

/** Null where there are none; those that cannot be read are put aside. */
export async function readSettings(context: Excel.RequestContext): Promise<unknown> {
  const { settings } = context.workbook;
  const setting = settings.getItemOrNullObject(SETTINGS).load("value");
  await context.sync();
  if (setting.isNullObject) return null;
  const text = String(setting.value);
  try {
    return JSON.parse(text);
  } catch {
    settings.add(DAMAGED, text);
    setting.delete();
    await context.sync();
    throw new DamagedSettings();
  }
}

/** Settings as they are kept. */
export function settingsText(settings: unknown): string {
  const text = JSON.stringify(settings);
  if (text.length > LONGEST_SETTINGS) throw new Error("The settings are too long to be kept in the workbook.");
  return text;
}

export async function keepSettings(context: Excel.RequestContext, text: string): Promise<void> {
  context.workbook.settings.add(SETTINGS, text);
  await context.sync();
}
