/** Nothing to set up yet. */
export default function setup(): void {}
