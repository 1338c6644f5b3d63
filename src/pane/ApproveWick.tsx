import { useRef } from "react";
import type { SeenCandle } from "../runsheet/seenCandle";
import type { SeenWick } from "../runsheet/series/readSeries";
import { Button } from "./Button";
import { Lines } from "./Lines";
import type { Approving } from "./state/useApproving";
import { APPROVING } from "./words/approving";

/** The press that approves a wick of a series for its vessel, and what is asked before it does. */
export function ApproveWick(props: { wick: SeenWick; approving: Approving; isBusy: boolean }) {
  const { wick: seen, approving, isBusy } = props;
  const { test, wick, vessel } = (seen.candles[0] as SeenCandle).test;
  const told = useRef<HTMLDivElement>(null);
  const plan = approving.planOf?.(test);
  if (!plan) return null;
  // What its own candles showed stands above; the same wick may be spelt otherwise in others.
  if (plan.kind === "unseen") return seen.passed < seen.judged || seen.passed === 0 ? null : <p>{plan.says}</p>;
  const asked = plan.kind === "ready" ? approving.doubtsOf(test) : undefined;
  /** The button that was pressed may be gone then; the keyboard goes on from what is told. */
  const approve = async () => {
    await approving.approve(test);
    told.current?.focus();
  };
  return (
    <>
      <div role="status" ref={told} tabIndex={-1}>
        {(plan.kind === "standing" || plan.kind === "unfit") && (
          <p className={plan.kind === "unfit" ? "wrong" : undefined}>{plan.says}</p>
        )}
        {asked && (
          <>
            <p>{APPROVING.doubts(wick)}</p>
            <Lines lines={asked} />
          </>
        )}
      </div>
      {(plan.kind === "ready" || plan.kind === "barred") && (
        <div className="buttons">
          <Button off={isBusy} onPress={approve}>
            {(asked ? APPROVING.anyway : APPROVING.approve)(wick, vessel)}
          </Button>
        </div>
      )}
    </>
  );
}
