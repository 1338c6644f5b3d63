import type { ReactNode } from "react";

/** A button that keeps the keyboard's focus while it is off: a disabled one would drop it. */
export function Button(props: {
  onPress: () => void;
  children: ReactNode;
  off?: boolean;
  look?: "main" | "quiet";
  describedBy?: string | undefined;
}) {
  const { onPress, children, off = false, look = "quiet", describedBy } = props;
  return (
    <button
      type="button"
      className={look}
      aria-disabled={off}
      aria-describedby={describedBy}
      onClick={() => {
        if (!off) onPress();
      }}
    >
      {children}
    </button>
  );
}
