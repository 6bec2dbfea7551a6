/** Words of the template, the slab sheet, and the client's sheets. */
export const benchSheetTexts = {
  sheetTitleTemplate: 'Full-size template',
  sheetTemplateTile: ({ tile }: { tile: string }) => `Tile ${tile}`,
  sheetTemplateSquareMm:
    'This square measures 50 mm both ways. If it differs, print again at 100\u00a0%, not fitted to the page.',
  sheetTemplateSquareInch:
    'This square measures 2 in both ways. If it differs, print again at 100\u00a0%, not fitted to the page.',
  sheetTemplateTape: ({ overlap }: { overlap: string }) =>
    `Neighbours lie ${overlap} over each other: lay cross on cross, then tape. Letters are rows, figures stand along a row.`,
  sheetTemplateCheck: 'Paper moves with damp: tape the whole length before you trust it.',

  sheetRevision: ({ mark }: { mark: string }) => `Rev. ${mark}`,

  sheetTitleSlab: 'Slab sheet',
  sheetSlabLead:
    'Before the first cut: chalk the datum, tape the edge at each numbered station, and write what the tape says. If a figure is off by more than you can spare, do not cut: mend the trace or the scale first.',
  sheetSlabStation: 'Station',
  sheetSlabAlong: 'Along the datum',
  sheetSlabLeft: 'To the left edge',
  sheetSlabRight: 'To the right edge',
  sheetSlabTaped: 'Taped',
  sheetSlabKeyStation: 'station, square to the datum',
  sheetSlabBeyond: 'A minus: the edge lies on the other side of the datum.',
  sheetSlabTurn: 'A slab is heavy: turn it with helpers or a hoist, hands and feet clear.',

  sheetTitleApproval: 'For approval',
  sheetApprovalLead: ({ name }: { name: string }) =>
    `${name}: the table as it is planned. Please check the sizes and sign below; work begins after that.`,
  sheetApprovalSize: 'Size of the top',
  sheetApprovalTolerance: 'Size may differ by up to',
  sheetApprovalWood: 'Wood of the slab',
  sheetApprovalResin: 'Resin, colour and kind',
  sheetApprovalFinish: 'Finish',
  sheetApprovalNature:
    'Wood is a grown thing: grain, colour and the line of a live edge follow the slab, and the top moves a little with the damp of the room. Drawing and picture are an impression.',
  sheetApprovalChange: ({ mark }: { mark: string }) =>
    `Signed for revision ${mark}. A later change gets another mark, and is signed anew.`,
  sheetApprovalClient: 'Client: name, date, signature',
  sheetApprovalMaker: 'Maker: name, date, signature',

  sheetTitleCare: 'Care of the table',
  sheetCareLead: ({ name }: { name: string }) => `For ${name}. Keep this sheet with the table.`,
  sheetCareHeat: 'Heat',
  sheetCareHeatText:
    'Cured resin softens and marks under hot things. Always put a thick mat under pots, pans, dishes and mugs.',
  sheetCareHeatLimit: 'Greatest heat, from the sheet of the resin used',
  sheetCareSun: 'Sun',
  sheetCareSunText:
    'Direct sun yellows resin, bleaches wood, and can heat a dark top beyond its limit. Keep it out of strong sun, or draw a blind.',
  sheetCareAir: 'Air of the room',
  sheetCareAirText: ({ dry, damp }: { dry: string; damp: string }) =>
    `The wood was reckoned for a room between ${dry} and ${damp} relative humidity. Drier air can open cracks and joints, damper air can lift and cup the top. Not over a radiator or heated floor vent, nor beside a stove.`,
  sheetCareClean: 'Cleaning',
  sheetCareCleanText:
    'Wipe with a damp, soft cloth and dry it. No solvents, no scouring cream, no steam. Wipe up spills at once, wine and coffee first.',
  sheetCareScratch: 'Scratches and dents',
  sheetCareScratchText:
    'Use mats and do not drag things over the top. Do not sand it yourself: the dust of resin and wood harms the lungs. Ask the maker.',
  sheetCareMove: 'Moving it',
  sheetCareMoveText: ({ mass }: { mass: string }) =>
    `The top weighs about ${mass}. Lift it with helpers, off its base, on its edge; never drag it.`,
  sheetCareMoveUnknown: 'The top is heavy. Lift it with helpers, off its base, on its edge; never drag it.',
  sheetMixLeftOut: '–',
} as const
