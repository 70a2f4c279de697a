import type { TemplateResult } from "lit";
import { answers } from "../../src/run/answers";
import { runOf } from "../../src/run/making";
import type { Run } from "../../src/run/schema";
import { draftOf, keepDraft } from "../draft";
import type { Sources } from "../sources";
import { choiceOf, type Draft, firstDraft, type Slip } from "./choosing";
import { setupForm } from "./setup";

const draftName = "run being chosen";

/** The run that is being chosen: kept as a draft until it begins. */
export class Chooser {
  /** Whether the run that has begun is chosen anew. */
  isAgain = false;
  private draft: Draft | undefined;
  private slip: Slip | undefined;

  constructor(private readonly changed: () => void) {}

  forget(): void {
    keepDraft(draftName, undefined);
    this.draft = undefined;
  }

  /** The run as it is chosen, or the field that hinders it. */
  chosen(sources: Sources): Run | Slip {
    const choice = choiceOf(this.draft!, sources, answers, Date.now());
    if ("field" in choice) {
      this.slip = choice;
      this.changed();
      return choice;
    }
    this.isAgain = false;
    this.forget();
    return runOf(choice, answers);
  }

  form(sources: Sources, { begin, cancel }: { readonly begin: (event: Event) => void; readonly cancel: () => void }): TemplateResult {
    this.draft ??= draftOf(draftName, (kept) => kept as Draft) ?? firstDraft(sources);
    const change = (draft: Draft) => {
      this.draft = draft;
      this.slip = undefined;
      keepDraft(draftName, draft);
      this.changed();
    };
    return setupForm(this.draft, sources, this.slip, { change, begin, ...(this.isAgain ? { cancel } : {}) });
  }
}
