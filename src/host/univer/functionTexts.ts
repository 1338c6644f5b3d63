import { type Injector, LocaleService } from "@univerjs/core";
import { type DescriptionService, IDescriptionService } from "@univerjs/preset-sheets-core";

interface Descriptions {
  _initRegisterDescriptions(): void;
}

/**
 * Brings what the formula bar says of Univer's own functions, a quarter of a megabyte that nobody reads at first. Until
 * then it knows their names only.
 */
export async function bringFunctionTexts(injector: Injector): Promise<void> {
  const { default: texts } = await import(
    /* webpackChunkName: "functionTexts" */ "@univerjs/sheets-formula/locale/en-US"
  );
  // The service's own way would copy all of it, and build the page anew as for another language.
  const known = injector.get(LocaleService).getLocales() as Record<string, object> | undefined;
  for (const [part, own] of Object.entries(texts)) if (known) known[part] = { ...known[part], ...own };
  const service: DescriptionService = injector.get(IDescriptionService) as DescriptionService;
  (service as unknown as Descriptions)._initRegisterDescriptions();
}
