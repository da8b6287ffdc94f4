/**
 * What was found, by what was asked. This is the one way in which the program keeps a result: beside the object that the
 * question is about, or in the function that was made to answer it, and gone with it; nothing is kept by a module. Whoever
 * wants to know what was read for an answer can record it here, where every question passes.
 */
class Found {
  readonly #answers = new Map<unknown, unknown>();

  answer<Answer>(question: unknown, find: () => Answer): Answer {
    const known = this.#answers.get(question);
    if (known !== undefined || this.#answers.has(question)) return known as Answer;
    const answer = find();
    this.#answers.set(question, answer);
    return answer;
  }
}

/** Where the answers about an object lie: with the object, so that they live as long, and are not copied with it. */
const FOUND = Symbol('found');

function foundOf(object: object): Found {
  const known = (object as { [FOUND]?: Found })[FOUND];
  if (known) return known;
  const fresh = new Found();
  Object.defineProperty(object, FOUND, { value: fresh });
  return fresh;
}

/** The answer to a question about an object, found once; the function that asks is the name of the question. */
export function foundWith<Answer>(
  object: object,
  question: (...given: never[]) => unknown,
  find: () => Answer,
): Answer {
  return foundOf(object).answer(question, find);
}

/** A value that is computed when it is first asked for. */
export function lazily<Value>(find: () => Value): () => Value {
  const found = new Found();
  return () => found.answer(find, find);
}

/** A function whose answers are kept as long as the function, by a word or a number. */
export function oncePerName<Name extends string | number, Value>(find: (name: Name) => Value): (name: Name) => Value {
  const found = new Found();
  return (name) => found.answer(name, () => find(name));
}

/** A function whose answer is kept as long as the object that it is asked about. */
export function oncePer<Key extends object, Value>(find: (key: Key) => Value): (key: Key) => Value {
  return (key) => foundOf(key).answer(find, () => find(key));
}

/** The same for a function that is asked about an object and a detail of it (a word, a number, another object). */
export function oncePerBoth<Key extends object, Detail, Value>(
  find: (key: Key, detail: Detail) => Value,
): (key: Key, detail: Detail) => Value {
  return (key, detail) =>
    foundOf(key)
      .answer(find, () => new Found())
      .answer(detail, () => find(key, detail));
}
