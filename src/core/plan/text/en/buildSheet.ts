/** Words of the printed form, order of work, shopping list and quotes. */
export const buildSheetTexts = {
  sheetTitleForm: 'Form and sheets',
  sheetTitleWork: 'Order of work',
  sheetTitleShopping: 'Shopping list',
  sheetTitleQuote: 'Quote',
  sheetTitleMakersQuote: 'Maker’s quote',

  sheetFormNone: 'No side needs a form here.',
  sheetFormFits: 'These sheets do not hold all parts: add a sheet to the list.',
  sheetFormPart: ({ number, name }: { number: number; name: string }) => `${number}  ${name}`,
  sheetFormCutOrder: 'Saw in this order, from edge to edge of what is left',
  sheetFormCutUpright: ({ number, at, from, to }: { number: number; at: string; from: string; to: string }) =>
    `${number}. Across, ${at} from the left edge; from ${from} to ${to} below the far edge.`,
  sheetFormCutLevel: ({ number, at, from, to }: { number: number; at: string; from: string; to: string }) =>
    `${number}. Along, ${at} from the far edge; from ${from} to ${to} from the left edge.`,
  sheetFormKerf: ({ kerf }: { kerf: string }) => `The kerf of ${kerf} lies beyond each measure.`,
  sheetFormLeak: 'Test the form for leaks with water before the wood goes in, and dry it.',
  sheetFormDust: 'Board dust harms the lungs: extract it at the saw, and wear a mask that fits.',

  sheetWorkDone: 'Done',
  sheetWorkWait: ({ days }: { days: number }) => (days === 1 ? 'then wait 1 day' : `then wait ${days} days`),
  sheetWorkProducts: 'Resin and finish: their own sheets say how long to wait; they come before this list.',

  sheetQuoteFor: ({ name }: { name: string }) => `For: ${name}`,
  sheetQuoteTop: ({ size, wood }: { size: string; wood: string }) =>
    wood === ''
      ? `Table top of wood and cast resin, ${size}`
      : `Table top of ${wood} and cast resin, ${size}`,
  sheetQuoteNature:
    'Wood is a grown thing: grain, colour and the line of a live edge follow the slab, and the top moves a little with the damp of the room.',
  sheetQuoteAgrees: ({ mark }: { mark: string }) =>
    `This is the price of the table as drawn in revision ${mark}. A change of size, wood or resin is quoted anew.`,
  sheetQuoteHolds: 'This quote holds until',
  sheetQuoteClient: 'Agreed, client: name, date, signature',
  sheetQuoteMaker: 'Maker: name, date, signature',
  sheetQuoteInside: 'For the maker alone: not to be handed on.',
} as const
