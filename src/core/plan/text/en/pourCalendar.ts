import type { PourEvent } from '../../../resin'

interface EventWords {
  readonly job: string
  readonly layer: string
  readonly amount: string
  readonly batches: string
  readonly reading: string
}

/** What stands in the calendar. */
export const calendarTexts: Readonly<Record<PourEvent['kind'], (words: EventWords) => string>> = {
  pour: ({ job, layer, amount }) => `${job}: pour ${layer}, ${amount}`,
  look: ({ job, layer, reading }) => `${job}: read pour ${layer}, about ${reading}`,
  ready: ({ job, layer }) => `${job}: has pour ${layer} set?`,
  demould: ({ job }) => `${job}: out of the form`,
  flatten: ({ job }) => `${job}: may be flattened`,
}

const ESTIMATE = 'Estimates. The product’s own sheet rules.'

export const calendarNotes: Readonly<Record<PourEvent['kind'], (words: EventWords) => string>> = {
  pour: ({ batches }) =>
    `${batches}. Gloves, goggles, air the room. Hold the wood down before you pour. ${ESTIMATE}`,
  look: ({ reading }) =>
    `The thermometer gun reads the surface; it should be at about ${reading}. Much hotter: fans early, and stay clear. The core is hotter than the surface. ${ESTIMATE}`,
  ready: () =>
    `Finger test with a glove: it must no longer mark. Only then the next pour. Scuff it where the plan says so. ${ESTIMATE}`,
  demould: () => `Earliest hour. It must be hard in the narrowest gap too. ${ESTIMATE}`,
  flatten: () => `Earliest hour. Dust of half-cured resin hurts: mask and extraction. ${ESTIMATE}`,
}

export const scuffFirst = 'Scuff the pour below and wipe it clean first.'
export const batchesText = (count: number, each: string): string =>
  count === 1 ? `One batch of ${each}` : `${count} batches of ${each}`
