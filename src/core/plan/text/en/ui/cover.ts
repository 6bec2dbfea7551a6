type Size = { readonly length: string; readonly width: string }

/** The stage Slabs, and what the searches offer at the stage Table. */
export const coverTexts = {
  'cover-searching': 'Searching …',
  'cover-cancelled': 'The search was stopped.',
  'cover-again': 'Search again',
  'cover-best': 'Best place',
  'cover-best-note': 'The place with most wood in the top, looked for over the whole slab.',
  'cover-find-best': 'Find the best place',
  'cover-best-found': ({ share, wood }: { share: string; wood: string }) =>
    `At the best place ${share} of the top is wood: ${wood}.`,
  'cover-lay-best': 'Lay it there',
  'cover-is-best': 'The table lies at the best place.',
  'cover-costs': ({ wood, resin }: { wood: string; resin: string }) =>
    `Where it lies now costs ${wood} of wood against the best place: about ${resin} more resin.`,
  'cover-against-wishes': ({ wood }: { wood: string }) =>
    `Where it lies now there is ${wood} more wood, but less of what you asked for.`,
  'cover-bring-back': 'Bring it to the best place',
  'cover-wishes': 'What matters for the place',
  'cover-wood-at': 'Wood matters most',
  'cover-wood-anywhere': 'Anywhere',
  'cover-wood-long-edges': 'Long edges',
  'cover-wood-ends': 'Ends',
  'cover-voids': 'Voids in the top',
  'cover-voids-welcome': 'Welcome',
  'cover-voids-as-gaps': 'Like any gap',
  'cover-voids-unwelcome': 'Not welcome',
  'cover-grain': 'Grain along the table within',
  'cover-grain-hint': 'The grain is taken to run along the datum line.',
  'cover-grain-any': 'any angle',
  'cover-largest': 'How big could it go',
  'cover-largest-note': 'The largest table that this slab gives, wherever it lies.',
  'cover-client-could': ({ length, width, most }: Size & { most: string }) =>
    `The client’s ${length} × ${width} could be ${most} at that width.`,
  'cover-client-less': ({ length, width, most }: Size & { most: string }) =>
    `The client’s ${length} × ${width} is more than this slab gives: ${most} of whole wood at that width.`,
  'cover-client-none': ({ length, width }: Size) =>
    `No table as wide as the client’s ${length} × ${width} is whole wood on this slab.`,
  'cover-growth': ({ length, width }: Size) => `The same shape could be ${length} × ${width}.`,
  'cover-kept': ({ length, least, mean }: { length: string; least: string; mean: string }) =>
    `With its live edge kept it could be ${length} long, ${least} wide at the narrowest, ${mean} on average.`,
  'cover-kept-none': 'Nowhere is the slab wide enough for this table with its live edge kept.',
  'cover-most-resin': 'Most resin in the top',
  'cover-show-curve': 'Show length against width',
  'cover-chart':
    'Greatest length for each width: whole wood drawn full, with resin dashed, the client’s size as a cross',
  'cover-chart-axes':
    'Length over width. Full line: whole wood. Dashes: with resin. Cross: the client’s size.',
  'cover-pick': 'Size on the curve',
  'cover-pick-none': 'touch the curve',
  'cover-take': 'Take this size',

  'slabs-best': ({ name }: { name: string }) => `Buy ${name}`,
  'slabs-best-cost': ({ cost }: { cost: string }) => `Slab and resin ${cost}.`,
  'slabs-best-least': ({ cost }: { cost: string }) =>
    `Slab and resin ${cost}, the least of those that serve as well.`,
  'slabs-cheaper': ({ slabs }: { slabs: string }) => `Cheaper, but: ${slabs}.`,
  'slabs-cheaper-wet': ({ name, cost }: { name: string; cost: string }) =>
    `${name} (${cost}) is too wet to pour`,
  'slabs-cheaper-fill': ({ name, cost, share }: { name: string; cost: string; share: string }) =>
    `${name} (${cost}) needs resin in ${share} of the top`,
  'slabs-cheaper-open': ({ name, cost }: { name: string; cost: string }) =>
    `${name} (${cost}) has yet to be measured`,
  'slabs-none':
    'No slab carries the table as it is. Make the table smaller, allow more resin, or join two slabs.',
  'slabs-comparing': ({ over, all }: { over: number; all: number }) => `Comparing: ${over} of ${all} answers`,
  'slabs-order': 'Sort by',
  'slabs-order-answer': 'which serves best',
  'slabs-order-cost': 'cost of material',
  'slabs-order-days': 'days of the pour',
  'slabs-order-resin': 'resin',
  'slabs-order-waste': 'waste',
  'slabs-order-weight': 'weight',
  'slabs-order-length': 'largest table',
  'slabs-covers': ({ spare, place }: { spare: string; place: string }) =>
    `Covers, with ${spare} to spare ${place}.`,
  'slabs-covers-voids': ({ spare, place, voids }: { spare: string; place: string; voids: number }) =>
    `Covers, with ${spare} to spare ${place}; ${voids === 1 ? 'one void' : `${voids} voids`} to fill.`,
  'slabs-at-corner': 'at the tightest corner',
  'slabs-at-side': 'at the tightest side',
  'slabs-at-place': 'at the tightest place',
  'slabs-covers-kept': ({ least, mean }: { least: string; mean: string }) =>
    `Covers with its live edge: ${least} wide at the narrowest, ${mean} on average.`,
  'slabs-needs-fill': ({ share, short }: { share: string; short: string }) =>
    `Needs resin in ${share} of the top: it misses by ${short} at the tightest side.`,
  'slabs-too-small': 'Does not serve: too small.',
  'slabs-short': ({ short, share }: { short: string; share: string }) =>
    `Does not serve: it misses by ${short}, and ${share} of the top would be resin.`,
  'slabs-short-kept': ({ short }: { short: string }) =>
    `Does not serve with its live edge: ${short} too short.`,
  'slabs-too-thin': ({ finished }: { finished: string }) =>
    `Does not serve: only ${finished} thick once flat and clean.`,
  'slabs-yard-yes': ({ spare }: { spare: string }) =>
    `Yes by tape, if it is straight: ${spare} to spare on each side.`,
  'slabs-yard-no': ({ short }: { short: string }) => `No by tape: ${short} short.`,
  'slabs-yard-measure': ({ narrowest, widest }: { narrowest: string; widest: string }) =>
    `Measure it: between ${narrowest} and ${widest} wide, so only a photo or stations can tell.`,
  'slabs-searching': 'Searching …',
  'slabs-needs-input': 'Its size is missing.',
  'slabs-rejected': ({ reason }: { reason: string }) => `Rejected: ${reason}`,
  'slabs-moisture-unknown': 'Moisture not measured: what it may yet shrink widens the ±.',
  'slabs-largest': 'Largest at this width',
  'slabs-resin': 'Resin to mix',
  'slabs-waste': 'Wood left over',
  'slabs-board': 'Board measure',
  'slabs-board-feet': ({ feet }: { feet: string }) => `${feet} board feet`,
  'slabs-weight': 'Weight, about',
  'slabs-finished': 'Thick once flat and clean',
  'slabs-price': 'Price',
  'slabs-material': 'Material of the table: slab and resin',
  'slabs-days': 'First pour to flattening',
  'slabs-days-figure': ({ days }: { days: number }) => (days === 1 ? '1 day' : `${days} days`),
  'slabs-no-pour': 'nothing to pour',
  'slabs-wishes': 'What all slabs are asked for',
  'slabs-cleaning': 'Taken off to clean it after the cast',
  'slabs-most-resin': 'Most resin in the top',
  'slabs-lay': 'Lay the table here',
  'slabs-look': 'Look at it',
  'slabs-reject': 'Reject',
  'slabs-reject-why': 'Why not this one?',
  'slabs-take-back': 'Take it back in',
  'slabs-drying': 'Flattening and drying',
  'slabs-remove': ({ name }: { name: string }) => `Remove ${name} from the job`,
  'slabs-flattening': 'Taken off to flatten it',
  'slabs-moisture': 'Moisture now',
  'slabs-pour-moisture': 'Moisture at the pour',
  'slabs-shrinkage': 'Width lost in drying',
  'slabs-unknown': 'not known',
  'slabs-add': 'Add a slab',
  'slabs-add-tape': 'By tape, in the yard',
  'slabs-add-photo': 'By photo',
  'slabs-add-own': ({ size }: { size: string }) => `By photo with my ${size} on it`,
  'slabs-add-own-note':
    'A board or rule that you have kept as yours (stage Size) lies on the slab in the photo: tap it, and the slab has its size.',
  'slabs-yard-title': 'Figures of the slab',
  'slabs-yard-name': ({ number }: { number: number }) => `Slab ${number}`,
  'slabs-ask-length': 'Length',
  'slabs-ask-narrowest': 'Narrowest',
  'slabs-ask-widest': 'Widest',
  'slabs-ask-thickness': 'Thickness',
  'slabs-ask-moisture': 'Moisture %',
  'slabs-ask-price': 'Price',
  'slabs-key-back': 'Back',
  'slabs-key-space': 'Space',
  'slabs-next': 'Next',
  'slabs-keep': 'Keep this slab',
  'slabs-close': 'Close',
  'slabs-two': 'Two slabs for one table',
  'slabs-two-note': 'A proposal: the best pair, each sawn straight along the joint.',
  'slabs-two-find': 'Look for a pair',
  'slabs-two-band-most': 'Widest band of resin between them',
  'slabs-two-none': 'No two of these slabs make the table either.',
  'slabs-two-rip': ({
    first,
    second,
    firstWidth,
    secondWidth,
    spare,
  }: {
    first: string
    second: string
    firstWidth: string
    secondWidth: string
    band: string
    spare: string
  }) =>
    `${first} (${firstWidth}) and ${second} (${secondWidth}), joined along a rip, with ${spare} of width to spare.`,
  'slabs-two-band': ({
    first,
    second,
    firstWidth,
    secondWidth,
    band,
  }: {
    first: string
    second: string
    firstWidth: string
    secondWidth: string
    band: string
    spare: string
  }) =>
    `${first} (${firstWidth}) and ${second} (${secondWidth}), with a band of resin of ${band} between them.`,
} as const
