import type { ValueWords } from './sentence'
import { BUILD_FIELD_WORDS } from './lostBuild'
import { RESIN_FIELD_WORDS } from './lostResin'

type Sentence = (say: ValueWords) => string

const named = (say: ValueWords): string => (say.text('name') === '' ? '' : ` ${say.text('name')}`)
const owned = (say: ValueWords): string => (say.text('owner') === '' ? '' : `${say.text('owner')}: `)

/** What the fields of a saved job are called on the screen. */
const FIELD_WORDS: Readonly<Record<string, string>> = {
  name: 'name',
  note: 'note',
  invented: 'mark of an invented job',
  id: 'sign',
  tag: 'tag',
  species: 'species',
  thicknessMm: 'thickness',
  moistureFraction: 'moisture',
  priceCents: 'price',
  kind: 'kind of survey',
  fileName: 'name of the photo’s file',
  focalLength35mm: 'focal length of the photo',
  face: 'face that the photo shows',
  sdPx: 'care of a click',
  refinement: 'sign of a refined click',
  flatness: 'flatness',
  origin: 'origin of a trace',
  cutBackMm: 'allowance for decayed wood',
  edges: 'slope of the live edge',
  table: 'table',
  outline: 'outline of the table',
  lengthMm: 'length',
  widthMm: 'width',
  sides: 'sides of the table',
  start: 'start side',
  end: 'end side',
  far: 'far side',
  near: 'near side',
  kerfMm: 'kerf',
  leastJointMm: 'least joint',
  stock: 'what was said of its choice',
  tape: 'three lengths by tape',
  flatteningMm: 'wood taken off to flatten it',
  pourMoistureFraction: 'moisture at the pour',
  shrinkageFraction: 'shrinkage',
  rejected: 'reason for leaving it out',
  cover: 'wishes for its place',
  woodAt: 'wish where wood is',
  voids: 'wish about voids',
  grainWithinRad: 'limit of the grain',
  mostResinShare: 'most resin',
  cleaningMm: 'wood taken off after the cast',
  mostBandMm: 'widest band of resin',
  resin: 'resin',
  ...RESIN_FIELD_WORDS,
  ...BUILD_FIELD_WORDS,
}

const field = (say: ValueWords): string => FIELD_WORDS[say.text('field')] ?? say.text('field')

/** One thing of its owner, by name. */
const one =
  (what: string): Sentence =>
  (say) =>
    `${owned(say)}${what}${named(say)} could not be read and was left out.`

/** A whole list of its owner. */
const all =
  (what: string): Sentence =>
  (say) =>
    `${owned(say)}${what} could not be read and were left out.`

/** What could not be kept of a saved job that was damaged or changed by hand: by name, so that it can be put right. */
export const lostTexts: Readonly<Record<string, Sentence>> = {
  'lost-slabs': all('the slabs'),
  'lost-options': all('the options'),
  'lost-slab': one('slab'),
  'lost-option': one('option'),
  'lost-marks': all('the marks'),
  'lost-mark': one('mark'),
  'lost-distances': all('the taped distances'),
  'lost-distance': one('taped distance'),
  'lost-boards': all('the boards'),
  'lost-board': one('board'),
  'lost-rules': all('the rules'),
  'lost-rule': one('rule'),
  'lost-lines': all('the straight lines'),
  'lost-line': one('a straight line'),
  'lost-capture': all('photo, traces and stations'),
  'lost-photos': all('the photos'),
  'lost-photo': one('photo'),
  'lost-photo-file': (say) =>
    `${owned(say)}the photo${named(say)} is not in the file, and not in this browser. Its marks and traces are kept.`,
  'lost-photo-damaged': (say) =>
    `${owned(say)}the photo${named(say)} in the file is damaged. Its marks and traces are kept.`,
  'lost-observations': all('the places of the marks in the photo'),
  'lost-observation': (say) => `${owned(say)}where mark${named(say)} is in the photo could not be read.`,
  'lost-datum': (say) => `${owned(say)}the datum line could not be read. Draw it again.`,
  'lost-traces': all('the traces'),
  'lost-trace': one('a trace'),
  'lost-trace-points': (say) => `${owned(say)}${say.count('count')} points of a trace could not be read.`,
  'lost-stations': all('the stations'),
  'lost-station': one('station'),
  'lost-footprint': (say) =>
    `${owned(say)}where the table lies on the slab could not be read. Lay it down again.`,
  'lost-cuts': (say) =>
    `${owned(say)}the cuts could not be read. The four cuts along the table are set anew.`,
  'lost-cut': one('cut'),
  'lost-pack': one('a pack of resin'),
  'lost-step': one('a step of the work'),
  'lost-sheet': one('a sheet of board'),
  'lost-height': one('a height that was read'),
  'lost-cost': one('a cost of your own'),
  'lost-layers': all('the layers set by hand'),
  'lost-logged-pours': all('the logged pours'),
  'lost-logged-pour': one('logged pour'),
  'lost-pieces': all('the named pieces'),
  'lost-piece': one('piece'),
  'lost-placements': all('the pieces laid into gaps'),
  'lost-placement': (say) => `${owned(say)}piece${named(say)} is no longer laid into a gap.`,
  'lost-too-many': (say) => `More slabs or options than a job may hold: ${say.count('count')} were left out.`,
  'lost-unknown-fields': (say) =>
    `${owned(say)}the file held something that the program does not know (${say.text('fields')}); it was left out.`,
  'reset-doubled-id': (say) =>
    `${say.text('name')} was there twice under one sign. Both are kept; what lay on the slab lies on the first.`,
  'reset-void-depth': (say) =>
    `${owned(say)}the depth of a void made no sense. It is taken as right through.`,
  'reset-value': (say) =>
    `${owned(say)}the ${field(say)} made no sense and was set to its starting value. Check it.`,
}
