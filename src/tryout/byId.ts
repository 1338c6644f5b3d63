/** An element that the page's own HTML holds. */
export function byId(id: string): HTMLElement {
  const element = document.getElementById(id);
  if (!element) throw new Error(`index.html has no element "${id}"`);
  return element;
}
