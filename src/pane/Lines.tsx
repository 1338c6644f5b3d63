/** Sentences below each other; nothing where there are none. */
export function Lines({ lines = [] }: { lines?: readonly string[] | undefined }) {
  if (lines.length === 0) return null;
  return (
    <ul>
      {lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
}
