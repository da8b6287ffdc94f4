/** What a command may do to the world; handed in as one argument, so that tests can replace it. */
export interface Effects {
  readonly cwd: string;
  out(text: string): void;
  err(text: string): void;
  /** Today, as an ISO date; from SOURCE_DATE_EPOCH where that is set, so that builds can be repeated. */
  today(): string;
  /** Asks a question on the terminal; null where nobody can answer. */
  ask(question: string): Promise<string | null>;
}
