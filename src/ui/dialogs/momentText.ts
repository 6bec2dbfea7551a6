/** A moment as the maker's own calendar and clock say it, to the second: versions of a job lie close together. */
export const momentText = (atMs: number): string =>
  new Date(atMs).toLocaleString([], { dateStyle: 'medium', timeStyle: 'medium' })
