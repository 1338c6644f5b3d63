/** Shows a button at the foot of the page, and beside it what comes of pressing it, a failure too. */
export function pressable(footer: string, work: () => Promise<string>, meanwhile = ""): { button: HTMLButtonElement } {
  const element = document.querySelector(footer) as HTMLElement;
  const button = element.querySelector("button") as HTMLButtonElement;
  const output = element.querySelector("output") as HTMLOutputElement;
  element.hidden = false;
  button.addEventListener("click", async () => {
    button.disabled = true;
    output.textContent = meanwhile;
    output.textContent = await work().catch(wordsOf);
    button.disabled = false;
  });
  return { button };
}

export function wordsOf(fault: unknown): string {
  return fault instanceof Error ? fault.message : String(fault);
}
