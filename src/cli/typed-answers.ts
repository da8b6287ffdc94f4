import { createInterface, type Interface } from 'node:readline';

/** Answers that come from the keyboard or, line by line, from a pipe; nothing is listened to before the first question. */
export class TypedAnswers {
  #reader: Interface | null = null;
  #lines: AsyncIterator<string> | null = null;

  /** Asks, and waits for a line; null where there are no more. */
  async ask(question: string): Promise<string | null> {
    this.#reader ??= createInterface({ input: process.stdin });
    this.#lines ??= this.#reader[Symbol.asyncIterator]();
    process.stdout.write(question);
    const { value, done } = await this.#lines.next();
    return done ? null : value;
  }

  /** Lets go of the keyboard, which else would keep the program running. */
  close(): void {
    this.#reader?.close();
  }
}
