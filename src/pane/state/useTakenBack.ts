import { useEffect, useRef } from "react";

/** Calls back when there are fewer of these than before: what was told of them is undone, and holds no more. */
export function useTakenBack(count: number, forget: () => void): void {
  const before = useRef(count);
  useEffect(() => {
    if (count < before.current) forget();
    before.current = count;
  });
}
