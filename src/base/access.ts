/** Who may see an entry, the widest circle first. */
export const ACCESS = ['public', 'internal', 'restricted'] as const;

/** Access of an entry, and the audience of a build. */
export type Access = (typeof ACCESS)[number];

/** True where somebody of the audience may see a thing of this access. */
export function maySee(audience: Access, access: Access): boolean {
  return ACCESS.indexOf(access) <= ACCESS.indexOf(audience);
}

/** The one of two audiences that may see less. */
export function lowerAccess(a: Access, b: Access): Access {
  return ACCESS[Math.min(ACCESS.indexOf(a), ACCESS.indexOf(b))] as Access;
}
