import type { ReactNode } from 'react';

/** What a question supplies to the frame, exactly: a later one adds no panel of its own. */
export interface QuestionParts {
  readonly drawing: ReactNode;
  readonly answer: ReactNode;
  readonly next: ReactNode;
  readonly why: ReactNode;
}
