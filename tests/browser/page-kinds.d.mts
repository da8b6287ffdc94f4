/** One page of every kind of the demonstration site, with states that a script makes. */
export const PAGE_KINDS: readonly string[];
