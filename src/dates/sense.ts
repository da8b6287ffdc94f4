/** The senses in which a date bounds an event (docs/methods.md, what a statement means). */
export const SENSES = ['within', 'by', 'not-before', 'under-way', 'began', 'ended', 'not-yet'] as const;

/** How a dated statement is meant. */
export type Sense = (typeof SENSES)[number];
