/** A fault that stops a command: exit code 2, words instead of a stack trace. */
export class Fault extends Error {}
