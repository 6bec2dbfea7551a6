import type { ResinNoticeCode } from '../../../resin'
import type { IssueSentence, ValueWords } from './sentence'

/** What the figures of a sheet and a pour are called on the screen. */
const FIGURES: Readonly<Record<string, string>> = {
  deepestLayerMm: 'deepest layer',
  referenceC: 'temperature that the deepest layer is stated for',
  surfacePeakLimitC: 'highest surface temperature',
  peakHours: 'hours to the peak',
  testWidthMm: 'width of the test',
  leastLayerMm: 'thinnest layer',
  recoatLeastHours: 'earliest next pour',
  recoatGreatestHours: 'latest next pour without scuffing',
  demouldHours: 'hours to demoulding',
  greatestMassKg: 'greatest mass in one pour',
  leastRoomC: 'least room temperature',
  leastResinC: 'least resin temperature',
  greatestDyeFraction: 'greatest share of dye',
  workingTime: 'working time',
  castDepthMm: 'depth of the cast',
  measuredLitres: 'litres measured on the dry fit',
  lossFraction: 'loss',
  handlingMinutes: 'handling time',
  bucketKg: 'bucket size',
  firstStartHour: 'hour of the first pour',
  packMarginFraction: 'margin for packs',
  haveLitres: 'resin in store',
  woodWPerMK: 'density of the wood',
  roomC: 'room temperature',
  resinC: 'temperature of the resin',
  layerDepthMm: 'depth of a layer set by hand',
  layerStartHour: 'hour of a layer set by hand',
}

const figureName = (say: ValueWords): string => FIGURES[say.text('figure')] ?? say.text('figure')
const pour = (say: ValueWords): string => `pour ${say.count('layer')}`
const Pour = (say: ValueWords): string => `Pour ${say.count('layer')}`

/** What a pour calls for: what is wrong, where, and what to do. Words of the plan; the product's sheet rules. */
export const pourNoticeTexts: Readonly<Record<ResinNoticeCode, IssueSentence>> = {
  'sheet-is-example': () =>
    'The product sheet is an invented example. Put in the figures of the sheet in your hand before you buy or pour.',
  'figure-unusable': (say) =>
    `The ${figureName(say)} cannot be ${say.decimal('value')}. Read it again; what needs it is left out until then.`,
  'sheet-limit-below-reference': (say) =>
    `The highest surface temperature (${say.temperature('surfacePeakLimitC')}) must lie above the temperature that the deepest layer is stated for (${say.temperature('referenceC')}). Read the sheet again.`,
  'sheet-not-reached': (say) =>
    `No usual resin behaves as this sheet says (${say.length('deepestLayerMm')} deep). A generic one is used instead: take the heat as a rough guess and make a test pour.`,
  'ratio-missing': () => 'The mix ratio is missing. Read it off the sheet, by volume or by mass.',
  'ratio-not-positive': (say) =>
    `A mix ratio of ${say.decimal('resin')} to ${say.decimal('hardener')} cannot be. Both parts must be more than nothing.`,
  'ratio-disagrees': (say) =>
    `The ratio by mass (${say.count('statedHardenerPer100')} parts to 100) does not agree with the one by volume and the densities (${say.count('foundHardenerPer100')} to 100). Read all of them again: off-ratio resin stays soft.`,
  'densities-missing': () =>
    'Without the densities of both parts there is no mix by mass and no weight. Read them off the sheet, or mix by volume.',
  'mixed-density-disagrees': (say) =>
    `The density of the mix (${say.count('statedKgPerM3')} kg/m³) does not agree with those of its parts (${say.count('foundKgPerM3')} kg/m³). Read them again.`,

  'room-too-hot': (say) =>
    `At ${say.temperature('roomC')} the room or the resin is about as hot as the core may get (${say.temperature('coreLimitC')}). No layer is safe: wait for cooler hours.`,
  'room-colder-than-sheet': (say) =>
    `The room gets down to ${say.temperature('roomC')}; the sheet asks for ${say.temperature('leastC')} at least. Warm it, or the resin may stay soft.`,
  'resin-colder-than-sheet': (say) =>
    `The resin is at ${say.temperature('resinC')}; the sheet asks for ${say.temperature('leastC')} at least. Let it stand in a warm room before you mix.`,
  'start-cooler-hour': (say) =>
    `Poured at ${say.clock('startHour')} the core reaches about ${say.temperature('coreC')}, at ${say.clock('betterHour')} only about ${say.temperature('betterCoreC')}. The cooler start is the safer one.`,

  'gaps-missing': () => 'There is no gap to fill that could be measured. Check the table and its pieces.',
  'gap-figure-unusable': (say) =>
    `The ${say.text('gapName')} could not be measured and is left out of the pour. Check the pieces beside it.`,
  'gap-wider-below': (say) =>
    `The ${say.text('gapName')} is wider below than above, so ${pour(say)} holds more heat than its ${say.length('depthMm')} say: it counts as ${say.length('countsAsMm')}.`,
  'test-width-unknown': (say) =>
    `The ${say.text('gapName')} is ${say.length('widthMm')} wide, and the sheet does not say how wide the test pour was. Wide pours run hotter: ask the maker of the resin, or pour thinner.`,
  'gap-wider-than-test': (say) =>
    `The ${say.text('gapName')} is ${say.length('widthMm')} wide, wider than the ${say.length('testWidthMm')} that the sheet was tested at. Pour thinner layers, or ask the maker of the resin.`,
  'cast-deeper-than-form': (say) =>
    `The cast is ${say.length('castDepthMm')} deep, but the form is only ${say.length('formHeightMm')} high. It would run over.`,
  'form-sides-low': (say) =>
    `The form stands ${say.length('formHeightMm')} high for a cast of ${say.length('castDepthMm')}. About ${say.length('usualMm')} above the cast is usual, so that nothing runs over.`,

  'kept-to-sheet': (say) =>
    `Here the model would allow about ${say.length('modelMm')}, but the sheet says ${say.length('sheetMm')}. The plan stays with the sheet.`,
  'beyond-sheet': (say) =>
    `${Pour(say)} is ${say.length('depthMm')} deep, deeper than the sheet allows (${say.length('sheetMm')}). That is your own risk: it may run away. Make a test pour first.`,
  'layer-deeper-than-limit': (say) =>
    `${Pour(say)} is ${say.length('depthMm')} deep; with its margin the plan would stop at ${say.length('limitMm')}. Pour thinner.`,
  'layer-thinner-than-least': (say) =>
    `${Pour(say)} is only ${say.length('depthMm')} deep; the sheet asks for ${say.length('leastMm')} at least, or it cures slowly and stays soft.`,
  'layer-heavier-than-sheet': (say) =>
    `${Pour(say)} takes ${say.mass('massKg')}, more than the sheet allows in one pour (${say.mass('greatestKg')}). Pour in more layers.`,
  'layers-do-not-add-up': (say) =>
    `The layers set by hand come to ${say.length('sumMm')}, more than the cast (${say.length('castDepthMm')}). Take some of it back.`,
  'layers-too-many': (say) =>
    `This would take ${say.count('layers')} layers, more than the ${say.count('greatest')} that are planned. Use a resin for deeper layers, or a cooler room.`,
  'layer-runs-hot': (say) =>
    `The core of ${pour(say)} may reach about ${say.temperature('coreC')}, over the limit of ${say.temperature('limitC')}. It can run away, smoke and crack: pour thinner, cooler, or later.`,
  'poured-on-hot-layer': (say) =>
    `${Pour(say)} would go onto a layer still at about ${say.temperature('belowC')} (room ${say.temperature('roomC')}). The heat adds up: wait until it has cooled.`,
  'poured-on-soft-layer': (say) =>
    `${Pour(say)} would go on before the layer below has set. Wait until it no longer marks under a gloved finger.`,
  'gels-later-than-sheet': (say) =>
    `${Pour(say)} sets only after about ${say.hours('hours')} here, later than the sheet’s ${say.hours('leastHours')}: thin layers and narrow gaps are slow. The finger test rules.`,
  'gels-too-slowly': (say) =>
    `${Pour(say)} has not set after ${say.hours('hours')} here. Warm the room, or pour deeper layers.`,
  'window-missed': (say) =>
    `${Pour(say)} comes ${say.hours('hours')} after the layer below, later than the sheet’s ${say.hours('greatestHours')}. Scuff the surface and wipe it clean first.`,
  'peak-while-asleep': (say) =>
    `${Pour(say)} is hottest at about ${say.clock('hour')}, when nobody is about. Pour at another hour, or have someone look.`,
  'pour-while-asleep': (say) =>
    `${Pour(say)} is to be poured at ${say.clock('hour')}, outside the hours that you are about.`,
  'thinner-cast-saves-a-pour': (say) =>
    `A cast of ${say.length('castDepthMm')} (${say.length('thinnerByMm')} thinner) would need only ${say.count('layers') === '1' ? 'one pour' : `${say.count('layers')} pours`}, one fewer.`,

  'handling-too-slow': (say) =>
    `A batch of ${pour(say)} is workable for about ${say.count('workingMinutes')} min, but you need ${say.count('handlingMinutes')} min. Mix smaller batches, or have a second pair of hands.`,
  'dye-over-greatest': (say) =>
    `The dye comes to ${say.percent('dyeFraction')} of the mix, more than the sheet’s ${say.percent('greatestFraction')}. Too much dye keeps resin soft.`,
  'dye-uneven': (say) =>
    `The batches differ by ${say.count('percent')} % in dye, because drops are whole. Weigh the dye instead.`,

  'piece-floats': (say) =>
    `Wood floats: ${say.text('pieceName')} is lifted from pour ${say.count('layer')} on, by up to ${say.force('forceN')}. Hold it down with bars across the form.`,
  'base-lifts': (say) =>
    `Pulled by the bars, the base of the form bends up by about ${say.decimal('liftMm')} mm at its edges. Stiffen it, or fix the bars to the bench.`,
  'piece-figure-unusable': (say) =>
    `How hard ${say.text('pieceName')} is lifted could not be worked out. Check its thickness.`,

  'packs-missing': () =>
    'The sheet names no packs, so there is no list to buy. Add the packs on sale and their prices.',
  'pack-figure-unusable': (say) => `Pack ${say.text('packName')} has no size or no price, and is left out.`,

  'log-entry-unusable': (say) =>
    `Your pour ${say.text('entryName')} lacks a figure, or has one that cannot be. It is left out.`,
  'log-too-short': (say) =>
    `You have logged ${say.count('pours')} of the ${say.count('leastPours')} pours that a fit of your own takes. Until then the sheet’s figures are used.`,
  'log-contradicts-itself': (say) =>
    `Your pours ${say.text('firstName')} and ${say.text('secondName')} contradict each other: the harder one stayed cooler. Check both; the sheet’s figures are used until then.`,
  'log-scattered': (say) =>
    `Your pours scatter by a factor of ${say.decimal('factor')} about any one fit. Take the heat as a rough guess.`,
  'log-hotter-than-sheet': (say) =>
    `Your pour ${say.text('entryName')} reached ${say.temperature('surfaceC')} on its surface, over the sheet’s ${say.temperature('limitC')}. Pour thinner next time.`,
}
