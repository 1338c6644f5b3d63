/**
 * Prints a page of HTML through the browser's own dialog, which also saves it as PDF. The page stands in a hidden
 * frame of this one until the dialog is closed.
 */
export async function printFrame(html: string, title: string): Promise<void> {
  const frame = document.createElement("iframe");
  frame.title = title;
  frame.style.cssText = "position: fixed; right: 0; bottom: 0; width: 0; height: 0; border: 0; visibility: hidden";
  frame.srcdoc = html;
  await new Promise((loaded) => {
    frame.addEventListener("load", loaded, { once: true });
    document.body.append(frame);
  });
  // The dialog offers the title of the whole page as the name of the PDF.
  const before = document.title;
  frame.contentWindow?.addEventListener("afterprint", () => {
    document.title = before;
    frame.remove();
  });
  document.title = title;
  frame.contentWindow?.print();
}
