import { benchSheetTexts } from './benchSheets'
import { buildSheetTexts } from './buildSheet'
import { mixSheetTexts } from './mixSheet'

/** Words of the printed sheets. Values are ready as text, in the units shown. */
export const sheetText = {
  sheetPrint: 'Print',
  sheetPrintPages: ({ pages }: { pages: string }) => `Pages: ${pages}`,
  sheetNothingYet: 'Nothing to print yet: the slab needs its edge and a table laid on it.',
  sheetPreviewPage: ({ page, title }: { page: string; title: string }) => `Page ${page}: ${title}`,

  sheetTitleCuts: 'Cut sheet',
  sheetTitleList: 'Cut list',
  sheetTitleTable: 'Table',
  sheetTitleResin: 'Resin',
  sheetTitleTableAndResin: 'Table and resin',
  sheetContinued: ({ title }: { title: string }) => `${title}, continued`,
  sheetPage: ({ page, pages }: { page: string; pages: string }) => `Page ${page} of ${pages}`,
  sheetInvented: 'Demo, all made up',
  sheetScale: ({ scale }: { scale: string }) => `Scale ${scale}`,
  sheetTooLargeToDraw: 'Too large to be drawn to a usual scale on this paper.',

  sheetBarMm:
    'This bar measures 100 mm on paper. Lay a rule on it: if it differs, print again at 100\u00a0%, not fitted to the page.',
  sheetBarInch:
    'This bar measures 4 in on paper. Lay a rule on it: if it differs, print again at 100\u00a0%, not fitted to the page.',
  sheetBarEndMm: '100 mm',
  sheetBarEndInch: '4″',
  sheetBarStands: ({ scale, length }: { scale: string; length: string }) =>
    `Scale ${scale}: on the wood the bar is ${length}.`,

  sheetFactFinished: 'Finished top',
  sheetFactSlab: 'Slab',
  sheetFactKerf: 'Saw kerf',
  sheetSizeByThickness: ({
    length,
    width,
    thickness,
  }: {
    length: string
    width: string
    thickness: string
  }) => `${length} × ${width}, ${thickness} thick`,
  sheetSizeThicknessUnknown: ({ length, width }: { length: string; width: string }) =>
    `${length} × ${width}, thickness not measured`,

  sheetSideStart: 'start',
  sheetSideEnd: 'end',
  sheetSideFar: 'far side',
  sheetSideNear: 'near side',

  sheetVerdictCovers: ({ spare }: { spare: string }) =>
    `The slab covers the whole top, with ${spare} to spare at the tightest place.`,
  sheetVerdictCoversKept: 'The slab covers the top; the live edge is kept.',
  sheetVerdictVoids: ({ voids, area }: { voids: string; area: string }) =>
    `Inside it lie voids to fill: ${voids}, together ${area}.`,
  sheetVerdictFill: ({ side, depth, share }: { side: string; depth: string; share: string }) =>
    `Wood is short by up to ${depth} (${side}): resin makes up ${share} of the top along its edges.`,
  sheetVerdictShort: ({ side, depth, length }: { side: string; depth: string; length: string }) =>
    `Not covered: at the ${side}, which is to be sawn wood, the slab is short by up to ${depth} over ${length}.`,
  sheetVerdictOff: 'Not covered: the table does not lie on the slab.',

  sheetDatum: 'datum',
  sheetZero: 'zero',
  sheetOtherEnd: 'the other end',
  sheetPiece: ({ name }: { name: string }) => `offcut ${name}`,
  sheetAlong: ({ along }: { along: string }) => `at ${along}`,
  sheetOffsetLeft: ({ offset }: { offset: string }) => `${offset} left`,
  sheetOffsetRight: ({ offset }: { offset: string }) => `${offset} right`,
  sheetOffsetNone: 'on the datum',

  sheetKeyEdge: 'edge of the wood',
  sheetKeyVoid: 'void in the slab',
  sheetKeyFinished: 'finished table',
  sheetKeyBlank: 'blank, untrimmed',
  sheetKeyCut: 'cut, its waste ticked',
  sheetKeyDatum: 'chalked datum',
  sheetKeyMark: 'mark on the slab',
  sheetKeyStations:
    'Where each end of a cut lies: first along the datum from its zero, then square off the datum, left or right as you look along the arrow.',
  sheetKeyStationsInList: 'There are too many cut ends to letter here: their stations are in the cut list.',

  sheetDatumHeading: 'Chalk the datum',
  sheetDatumMarks: ({ from, to }: { from: string; to: string }) =>
    `Snap a chalk line from mark ${from} through mark ${to} and on to both ends of the slab. Zero is at mark ${from}.`,
  sheetDatumTaped: ({ start, end }: { start: string; end: string }) =>
    `Find the two ends of the datum by tape and snap a chalk line through them. Zero: ${start}. The other end: ${end}.`,
  sheetDatumTape: ({ mark, distance }: { mark: string; distance: string }) => `${distance} from mark ${mark}`,
  sheetDatumStations:
    'Snap again the chalk line that the slab was measured from. Zero is where its stations began.',
  sheetDatumLength: ({ from, to, length }: { from: string; to: string; length: string }) =>
    `Tape from ${from} to ${to}: it must read ${length}.`,
  sheetDatumSquare:
    'Set each end of a cut out along the datum, then square off it to the left or right, looking from zero along the arrow. A minus lies before zero.',
  sheetDatumSlab: ({ length, width }: { length: string; width: string }) =>
    `Tape the slab before you cut: ${length} along the datum and ${width} across, over all. If it differs, trust the tape, not the sheet.`,
  sheetDatumCheck:
    'Join the two ends, then tape the check length of the cut. If it does not agree, set the cut out anew before the saw touches the wood.',

  sheetListCut: 'Cut',
  sheetListFirstEnd: 'First end a',
  sheetListSecondEnd: 'Second end b',
  sheetListAlong: 'along',
  sheetListOffset: 'off the datum',
  sheetListLength: 'Length',
  sheetListCheck: 'Check length',
  sheetListNone: 'No cuts: the table takes no wood from the slab as it lies.',
  sheetListOwnCut: 'own line',
  sheetCheckFromMark: ({ mark, end, distance }: { mark: string; end: string; distance: string }) =>
    `${distance}, mark ${mark} to ${end}`,
  sheetCheckOwn: ({ from, to, distance }: { from: string; to: string; distance: string }) =>
    `${distance}, ${from} to ${to}`,
  sheetCutWaste: ({ side, from, to }: { side: 'left' | 'right'; from: string; to: string }) =>
    `Waste on the ${side}, looking from ${from} to ${to}.`,
  sheetCutKerf: ({ kerf }: { kerf: string }) => `Kerf ${kerf}, all of it in the waste.`,
  sheetCutYields: ({ pieces }: { pieces: string }) => `Falls off: ${pieces}.`,
  sheetCutYieldsNothing: 'Nothing worth keeping falls off.',
  sheetCutAngle: ({ angle }: { angle: string }) => `${angle} to the datum.`,
  sheetCutTaped: ({ end, distances }: { end: string; distances: string }) => `${end} by tape: ${distances}.`,
  sheetCutTape: ({ mark, distance }: { mark: string; distance: string }) => `${distance} from ${mark}`,
  sheetNoteHeading: 'Note',

  sheetTickChecked: 'checked',
  sheetTickCut: 'cut',

  sheetKeyResin: 'resin',
  sheetKeyLaid: 'offcut laid in',
  sheetResinHeading: 'What to mix',
  sheetResinCast: 'Cast thickness',
  sheetResinEdges: 'Gaps along the edges',
  sheetResinVoids: 'Voids',
  sheetResinFlood: 'Over the wood',
  sheetResinClearance: 'Along the form',
  sheetResinUnder: 'Under the wood',
  sheetResinGap: 'Fills the gaps',
  sheetResinMeasured: 'Measured on the dry fit',
  sheetResinLoss: ({ share }: { share: string }) => `Left in buckets, ${share}`,
  sheetResinMix: 'To mix',
  sheetResinSure: 'How sure, as far as the photo goes',
  sheetResinKg: 'By weight',
  sheetResinProduct: 'Product',
  sheetResinExample: ({ name }: { name: string }) => `${name} (not a real product)`,
  sheetResinNone: 'Nothing to fill: no resin is needed for gaps or voids.',
  sheetResinEstimate:
    'An estimate: edges and voids are taken as standing square through the slab. A sloping edge or an undercut void takes more or less. Look at the underside before you order.',
  ...benchSheetTexts,
  ...mixSheetTexts,
  ...buildSheetTexts,
  sheetResinBlocked: 'The resin cannot be worked out yet: the plan says why.',
  sheetGapsHeading: 'Where wood is short',
  sheetGapSide: ({ side, depth, length }: { side: string; depth: string; length: string }) =>
    `${side}: up to ${depth} deep, along ${length}`,
  sheetGapNone: 'Nowhere along the edges.',
  sheetLayHeading: 'Lay the offcuts in',
  sheetLayHow:
    'Each by the two ends of its sawn edge in the blank: along from the start of the finished table, and in from its far side. A minus lies outside it. Trim off what stands over the blank, and keep the joint to other wood.',
  sheetLayPiece: ({
    piece,
    fromName,
    from,
    toName,
    to,
  }: Record<'piece' | 'fromName' | 'from' | 'toName' | 'to', string>) =>
    `${piece}: ${fromName} at ${from}; ${toName} at ${to}.`,
  sheetLayPlace: ({ along, across }: { along: string; across: string }) => `${along} along, ${across} in`,
  sheetLayTurned: ({ piece }: { piece: string }) => `${piece}, turned over`,
  sheetLayOverlap: ({ piece, area }: { piece: string; area: string }) =>
    `${piece} lies on other wood as planned (${area}): trim it or move it before you pour.`,
  sheetKeptEdge: ({ side, least, at, mean }: { side: string; least: string; at: string; mean: string }) =>
    `${side}, live edge kept: ${least} wide at the least (${at} along), ${mean} in the mean`,

  sheetSlabCaution:
    'A stressed slab can close the kerf and throw the saw back: wedge the kerf behind the blade. Tape the slab first; read what the cut list says before you cut.',
  sheetTableCaution: 'The top is heavy: turn it with helpers or a hoist, hands and feet clear.',
  sheetSawHeading: 'Before you cut',
  sheetSawTrace:
    'Check the drawing against the slab with a tape at a few places. The photo cannot show what bark and shadow hide.',
  sheetSawStress:
    'A slab holds stress. The kerf can close on the blade and throw the saw back: drive wedges into the kerf behind the blade, stand out of its line, stop if it pinches.',
  sheetSawSupport:
    'Support both sides of the cut along their whole length, so that neither part drops or closes the kerf.',
  sheetSawLift:
    'A slab is heavy: lift and turn it with helpers or a hoist, hands and feet clear of the edge. Clamp it before you let go.',
  sheetSawDust:
    'Wood dust harms the lungs, and some woods bring on allergy: extract it at the saw, and wear a mask that fits.',

  sheetPourHeading: 'Before you pour',
  sheetPourSheet:
    "Follow the product's own sheet and safety data sheet for mixing, depth of each pour, temperature and waiting time. They come before this one.",
  sheetPourSkin:
    'Uncured resin and hardener can cause a lasting skin allergy: nitrile gloves, changed often; cover your arms.',
  sheetPourVapour:
    'Work with fresh air through the room; where the product asks for it, wear the mask that it names.',
  sheetPourHeat:
    'A deep pour or a full bucket can heat up by itself. If it smokes, cracks or gets too hot to be near: leave it, ventilate, do not touch.',
  sheetPourLeftovers:
    'Set leftovers out in thin trays outdoors until they are hard and cold. Never into a bin while soft.',
  sheetPourDust:
    'Dust of half-cured resin counts as uncured: wait until it is fully cured before you sand, and extract the dust.',
} as const

export type SheetText = typeof sheetText
