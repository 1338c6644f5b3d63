import type { IWorkbookData } from "@univerjs/core";

/** What a package of Univer's keeps in a workbook; nothing where that cannot be read. */
export function resource<T extends object>(data: IWorkbookData, name: string): T {
  const text = data.resources?.find((one) => one.name === name)?.data;
  try {
    return (text ? JSON.parse(text) : {}) as T;
  } catch {
    return {} as T;
  }
}
