import { Button } from "./Button";
import { TextField } from "./fields";
import { Lines } from "./Lines";
import type { Tracing } from "./state/useTracing";
import type { Sought } from "./tracing/traced";
import { contentsLines, recallLines, TRACING } from "./words/tracing";

/** Where a lot went, and what went into a run. */
export function TracingSection({ tracing, isBusy }: { tracing: Tracing; isBusy: boolean }) {
  const { names, found, amountOf, refused } = tracing;
  return (
    <section aria-labelledby="pane-tracing">
      <h2 id="pane-tracing">{TRACING.heading}</h2>
      <p className="hint">{TRACING.hint}</p>
      {refused ? (
        <p className="wrong">{refused}</p>
      ) : (
        <>
          <div className="pairs">
            <Seeker field="item" names={names.items} tracing={tracing} />
            <Seeker field="lot" names={names.lots} tracing={tracing} />
          </div>
          <div role="status">
            <Lines lines={found?.recall && recallLines(found.recall, amountOf)} />
          </div>
          <Button off={isBusy || !found?.recall} onPress={tracing.writeRecall}>
            {TRACING.writeRecall}
          </Button>
          <div className="pairs">
            <Seeker field="run" names={names.runs} tracing={tracing} />
          </div>
          <div role="status">
            <Lines lines={found?.contents && contentsLines(found.contents, amountOf)} />
          </div>
          <Button off={isBusy || !found?.contents} onPress={tracing.writeContents}>
            {TRACING.writeContents}
          </Button>
        </>
      )}
    </section>
  );
}

/** A field with the names that the record knows. */
function Seeker({ field, names, tracing }: { field: keyof Sought; names: readonly string[]; tracing: Tracing }) {
  const list = `pane-traced-${field}`;
  return (
    <>
      <datalist id={list}>
        {names.map((name) => (
          <option key={name} value={name} />
        ))}
      </datalist>
      <TextField
        label={TRACING[field]}
        value={tracing.sought[field]}
        wrong={tracing.found?.wrong[field]}
        holds="words"
        list={list}
        onChange={(text) => tracing.seek(field, text)}
      />
    </>
  );
}
