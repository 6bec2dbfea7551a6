/** Why a search for how offcuts fill the gaps has nothing to say, and what it needs. */
export const fillProblems = {
  'fill-no-offcuts': () =>
    'There is no offcut to lay in. Make the cuts along the table’s sides first, or cut a piece off.',
  'fill-no-gap': () =>
    'There is no gap that an offcut could fill: what is open is narrower than the resin joints around a piece.',
  'fill-worker-failed': () => 'The search failed. Your job is kept; change a figure to try again.',
  'fill-worker-crashed': () => 'The search broke down. Your job is kept; try again.',
  'fill-worker-ended': () => 'The search was stopped.',
} as const
