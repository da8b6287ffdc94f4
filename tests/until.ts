/** Asks again until something is so; gives up only when no machine, however busy, could still be at it. */
export async function until(test: () => boolean | Promise<boolean>): Promise<void> {
  for (let i = 0; i < 6000; i += 1) {
    if (await test()) return;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  throw new Error('it did not come about in five minutes');
}
