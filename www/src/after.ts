// What can wait until a touch has been seen to be taken.

/** Runs once what the page is now has been painted. */
export function painted(run: () => void): void {
  requestAnimationFrame(() => setTimeout(run));
}
