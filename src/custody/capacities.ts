/** Capacities in which somebody has a thing for another who goes on possessing it. */
export const FOR_ANOTHER: readonly string[] = ['custodian', 'consignee', 'borrower', 'depositary', 'pledgee'];
