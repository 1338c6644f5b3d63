import type { Remarks } from "../host";

/** What Excel has to say beside what it was asked, kept for those who listen. */
export class RemarkBoard {
  private readonly doubts = new Map<string, string>();
  private waiting: string | undefined;
  private readonly listeners = new Set<(remarks: Remarks) => void>();

  /** Says a doubt, or no longer when it is undefined. One about the same takes the place of the one before. */
  say(about: string, doubt: string | undefined): void {
    if (this.doubts.get(about) === doubt) return;
    if (doubt === undefined) this.doubts.delete(about);
    else this.doubts.set(about, doubt);
    this.tell();
  }

  /** Says what is waited for, or that nothing is. */
  wait(what: string | undefined): void {
    if (this.waiting === what) return;
    this.waiting = what;
    this.tell();
  }

  listen(callback: (remarks: Remarks) => void): () => void {
    this.listeners.add(callback);
    callback(this.now());
    return () => this.listeners.delete(callback);
  }

  private now(): Remarks {
    return { waiting: this.waiting, doubts: [...this.doubts.values()] };
  }

  private tell(): void {
    for (const listener of this.listeners) listener(this.now());
  }
}
