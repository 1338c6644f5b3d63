import type { Problem } from "../../problem";
import type { UsualSetting } from "../../settings";
import type { AskedColumn, Holds } from "../../tables/unreadColumns";

/** What to ask about a column that nobody reads; an error where the run would pour by what stands elsewhere. */
export function askAbout(
  { table, name, questions }: AskedColumn,
  /** The defaults that served any row. */
  usual: ReadonlySet<UsualSetting>,
): Problem[] {
  const holds = (when: Holds) => (typeof when === "boolean" ? when : usual.has(when));
  const asked = questions.filter(({ isAsked }) => holds(isAsked));
  // What stops the run is never hidden by what is only asked.
  const question = asked.find(({ isError }) => holds(isError)) ?? asked[0];
  if (!question) return [];
  return [{ table, unread: name, severity: holds(question.isError) ? "error" : "warning", text: question.text }];
}
