/** Panels at a cell, such as its note, stay whole on the screen: beside a wide cell Univer puts them wherever that ends. */

/** What stays free at the edges of the screen, in pixels. */
const GAP = 8;

/** Until it has its place a panel is so far outside. */
const NO_PLACE = -1000;

const kept = new WeakSet<HTMLElement>();

/** Univer's own way of moving such a panel, as its size changes, had it go away at times. */
export function keepWhole(popUp: HTMLElement): void {
  if (kept.has(popUp)) return;
  kept.add(popUp);
  const place = () => {
    keepWithin(popUp, "left", popUp.offsetWidth, window.innerWidth);
    keepWithin(popUp, "top", popUp.offsetHeight, window.innerHeight);
  };
  new MutationObserver(place).observe(popUp, { attributeFilter: ["style"] });
  new ResizeObserver(place).observe(popUp);
}

function keepWithin({ style }: HTMLElement, side: "left" | "top", size: number, room: number): void {
  const at = Number.parseFloat(style[side]);
  const within = Math.max(GAP, Math.min(at, room - size - GAP));
  if (at > NO_PLACE && Math.abs(within - at) >= 1) style[side] = `${within}px`;
}
