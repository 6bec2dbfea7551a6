/** The mix card: what is weighed at the bench, one batch to a block. */
export const mixSheetTexts = {
  sheetTitleMix: 'Mix card',
  sheetMixWaiting: 'Working out the mix card …',
  sheetMixExample: 'The product sheet is an invented example: do not mix by this card.',
  sheetMixProduct: ({ product, room, air }: { product: string; room: string; air: string }) =>
    `${product}, poured at ${room}, ${air}.`,
  sheetMixStill: 'still air',
  sheetMixFans: 'fans over the pour',
  sheetMixEstimate:
    'Times and temperatures are estimates of a general resin fitted to the product’s sheet: the sheet rules. The gun reads the surface, and the core is hotter.',
  sheetMixAll: ({ litres }: { litres: string }) => `To mix in all: ${litres}.`,
  sheetMixAllSure: ({ litres, sure }: { litres: string; sure: string }) =>
    `To mix in all: ${litres} ${sure}, as far as the photo goes. Measure the gaps in the form before you mix.`,
  sheetMixPour: ({ number, of, when }: { number: string; of: string; when: string }) =>
    `Pour ${number} of ${of}: ${when}`,
  sheetMixLevels: ({ from, to, litres }: { from: string; to: string; litres: string }) =>
    `From ${from} to ${to} above the floor of the form, ${litres} to mix.`,
  sheetMixScuff: 'Scuff the pour below and wipe it clean first.',
  sheetMixLooks: ({ looks }: { looks: string }) => `Read the surface: ${looks}.`,
  sheetMixLook: ({ when, reading }: { when: string; reading: string }) => `${when} about ${reading}`,
  sheetMixHottest: ({ core, when }: { core: string; when: string }) => `Core at most about ${core}, ${when}.`,
  sheetMixBand: ({ from, to }: { from: string; to: string }) => `${from} to ${to}`,
  sheetMixNext: ({ when }: { when: string }) =>
    `Next pour not before ${when}, and only on what no longer marks.`,
  sheetMixBatch: ({ pour, number, of }: { pour: string; number: string; of: string }) =>
    `Pour ${pour}, batch ${number} of ${of}`,
  sheetMixResin: 'Resin',
  sheetMixHardener: 'Hardener',
  sheetMixDye: 'Dye',
  sheetMixTogether: 'Together',
  sheetMixByWeight: 'by weight',
  sheetMixByVolume: 'by volume',
  sheetMixDrops: ({ drops }: { drops: string }) => `${drops} drops`,
  sheetMixNotKnown: '–',
  sheetMixWorkable: ({ minutes }: { minutes: string }) =>
    `Workable for about ${minutes} min. Never leave it standing in the bucket.`,
  sheetMixWorkableUnknown: 'Pour it at once. Never leave it standing in the bucket.',
  sheetMixTicks: ['weighed', 'stirred', 'poured'],
  sheetMixPouredAt: 'poured at',
  sheetMixHottestRead: 'hottest reading',
  sheetMixHold: 'Hold the wood down',
  sheetMixHoldPiece: ({
    piece,
    bars,
    force,
    depth,
  }: {
    piece: string
    bars: string
    force: string
    depth: string
  }) => `${piece}: ${bars} bars, ${force} each; floats from ${depth} of resin.`,
  sheetMixHoldNone: 'No piece is lifted by the resin.',
  sheetMixReadings: 'Readings to act on',
  sheetMixReading: ({ surface, what, lead }: { surface: string; what: string; lead: string }) =>
    `${surface}: ${what} (about ${lead} to the hottest).`,
  sheetMixWatch: 'watch, read every half hour',
  sheetMixCool: 'fans now, later they no longer help',
  sheetMixClear: 'stay clear and ventilate, do not touch it',
  sheetMixAfter: 'Afterwards',
  sheetMixDemould: ({ when }: { when: string }) => `Out of the form not before ${when}.`,
  sheetMixFlatten: ({ when }: { when: string }) => `Flatten not before ${when}.`,
} as const
