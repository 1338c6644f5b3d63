/** Calls back once the page shows such an element; where none comes, after so many frames no more. */
export function whenThere(selector: string, callback: (element: HTMLElement) => void, frames = 60): void {
  const element = document.querySelector<HTMLElement>(selector);
  if (element) callback(element);
  else if (frames > 0) requestAnimationFrame(() => whenThere(selector, callback, frames - 1));
}
