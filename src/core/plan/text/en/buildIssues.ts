import type { BuildCode } from '../../build/buildCodes'
import type { IssueSentence } from './sentence'

export const buildIssueTexts: Readonly<Record<BuildCode, IssueSentence>> = {
  'build-species-unknown': () =>
    'This kind of wood is not in the table: weight is the usual one, movement is not worked out. Choose a kind, or give figures of your own.',
  'build-moisture-missing': () =>
    'Nobody has read the slab’s moisture yet. Take a reading: how it will move depends on it.',
  'build-moisture-high': (say) =>
    `The slab reads ${say.percent('share')}, above the ${say.percent('limitFraction')} that you seal and pour at. Let it dry first, or resin will not hold and the wood will shrink away from it.`,
  'build-moves': (say) =>
    `In the client’s dry season ${say.text('pieceName')} will be about ${say.length('changeMm')} narrower than now. Dry it nearer to that, or leave room for it.`,
  'build-thin-when-flat': (say) =>
    `Flat on both faces the slab is ${say.length('flatMm')} thick, ${say.length('leftMm')} short of what the top should be. Make the top thinner, or choose another slab.`,
  'build-thin-unless-ripped': (say) =>
    `Flattened whole, the slab is only ${say.length('flatMm')} thick; ripped first, its thinnest piece keeps ${say.length('pieceMm')}, enough for the top. Rip before you flatten.`,
  'build-readings-few': (say) =>
    `Too few height readings (${say.count('count')}) for a plane: take three or more, at the corners and in the middle.`,
  'build-sheet-too-small': (say) =>
    `${say.text('pieceName')} of the form (${say.length('lengthMm')} × ${say.length('widthMm')}) lies on none of your sheets. Add a larger sheet to the list.`,
  'build-sheets-short': () =>
    'The sheets in your list do not suffice for the form. Add a sheet that can be bought.',
  'build-sheets-unproven': () =>
    'The sawing of the sheets is a good one, but it is not proven that nothing costs less.',
  'build-form-round': (say) =>
    `The heaviest piece is about ${say.mass('massKg')}, more than one person lifts by any guidance. Lay it on the base first and build the sides round it, or get help.`,
  'build-top-heavy': (say) =>
    `The finished top is about ${say.mass('massKg')}: even four people carry ${say.mass('eachKg')} each, above the published 23 kg for the best of cases. Plan for a trolley, a lift or more parts.`,
  'build-falls': () =>
    'The top does not balance inside its feet: it falls by itself. Move the feet towards its ends.',
  'build-tips': (say) =>
    `About ${say.mass('massKg')} at the edge tip the table: it reaches ${say.length('overhangMm')} beyond its feet. Move the feet out, or make the base heavier.`,
  'build-no-feet': () =>
    'The feet stand so far in that nothing is left between them. Set them nearer to the edges.',
  'build-door': () =>
    'The top does not go through the door, however it is turned. Check the sizes, or deliver it in parts.',
  'build-lift': () =>
    'No way was found to get the top into the lift. Plan for the stairs, or measure the lift again.',
  'build-turn': () =>
    'No way was found to carry the top round the turn. Measure the turn and its headroom, or plan another way in.',
  'build-step-early': (say) =>
    `The step “${say.text('stepName')}” stands before “${say.text('needName')}”, which it needs. Move it after that.`,
  'build-slab-unpriced': () =>
    'The slab has no price yet, so the quote holds no wood. Type what it costs at Photo.',
  'build-hours-unpriced': () => 'An hour has no price yet, so the quote holds no work. Type your rate.',
}
