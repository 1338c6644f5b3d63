/** Puts a text where it differs from what stands there: a live region would be read out again. */
export function setText(element: HTMLElement, text: string): void {
  if (element.textContent !== text) element.textContent = text;
}
