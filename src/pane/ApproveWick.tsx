import { useRef } from "react";
import type { BurnTest } from "../runsheet/tables/burnTests";
import { Button } from "./Button";
import { Lines } from "./Lines";
import type { Approving } from "./state/useApproving";
import { APPROVING } from "./words/approving";

/** The press that approves the wick of a test for its vessel, and what is asked before it does. */
export function ApproveWick(props: { test: BurnTest; approving: Approving; isBusy: boolean }) {
  const { test: own, approving, isBusy } = props;
  const { test, wick, vessel } = own;
  const told = useRef<HTMLDivElement>(null);
  const plan = approving.planOf?.(test);
  if (!plan || plan.kind === "unseen") return null;
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
