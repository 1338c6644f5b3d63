import { it } from "vitest";
import { expectSentences, openSpoiled } from "./hostile";

it("20 spoiled files are opened or refused in a sentence, and nothing else happens", () =>
  expectSentences(openSpoiled(20)));
