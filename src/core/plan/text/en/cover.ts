/** Why a search for the best place or the largest table has nothing to say, and what it needs. */
export const coverProblems = {
  'cover-no-wood': () =>
    'There is no wood to lay a table on yet. Trace the slab’s outline and set its scale.',
  'cover-table-no-size': () => 'The table has no size yet. Type its length and width.',
  'cover-share-out-of-range': () => 'The share of resin must be at least 0 % and less than 100 %.',
  'cover-outline-not-convex': () =>
    'This outline has inward corners, so there is no even margin around it. Ask for the largest similar shape instead.',
  'cover-outline-hidden': () =>
    'No place in this outline sees all of it (like a U), so it cannot be made larger or smaller by the search. Try a simpler outline.',
  'cover-worker-failed': () => 'The search failed. Your job is kept; change a figure to try again.',
  'cover-worker-crashed': () => 'The search broke down. Your job is kept; try again.',
  'cover-worker-ended': () => 'The search was stopped.',
} as const
