import type { IssueCode } from '../../issue'
import type { IssueSentence } from './sentence'
import { buildIssueTexts } from './buildIssues'
import { pourNoticeTexts } from './pourNotices'

/** What is wrong, where, and what to do about it: one sentence or two for each code. */
export const issueTexts: Readonly<Record<IssueCode, IssueSentence>> = {
  'scale-no-photo': () => 'This slab has no photo yet. Open one to begin.',
  'scale-datum-missing': () =>
    'The datum line is not set: place two marks, or draw the chalked line on the photo.',
  'scale-datum-unusable': () =>
    'The datum line is too short or lies off the slab. Draw it along the slab, as long as you can.',
  'scale-unsure': (say) =>
    `A length of ${say.length('lengthMm')} is told by this photo to ± ${say.length('plusMinusMm')} only. ` +
    (say.text('markNames') === ''
      ? 'Tape one more distance, far apart.'
      : `Zoom in on ${say.text('markNames')} and set them again, each on its very middle.`),
  'scale-board-unchecked': () =>
    'The size hangs on the board alone. Tape one long distance to check it: place two marks far apart and type what is between them.',
  'later-photo-few-marks': (say) =>
    `The later photo ${say.text('photoName')} has ${say.count('marks')} of the first photo’s marks set on it: it takes ${say.count('needed')}, far apart. Until then what is traced on it waits.`,
  'later-photo-no-scale': (say) =>
    `The marks on the later photo ${say.text('photoName')} fit no view of the slab. Check which letter is which, and whether it shows the top or the underside.`,
  'later-photo-off': (say) =>
    `On the later photo ${say.text('photoName')} the marks lie ${say.length('offMm')} off where the first photo has them. One may be set wrongly, or not last: check them, and which face it shows.`,
  'reference-missing': () =>
    'The program does not know yet how big anything is. Mark four places and tape the distances between them, or lay down a board of known size.',
  'reference-too-few-marks': (say) =>
    `Too few marks with taped distances (${say.count('count')}): it takes four, with at least five of the six distances between them.`,
  'reference-collinear': (say) =>
    `Marks ${say.text('markNames')} lie nearly on one line. Spread them over the slab: near its four ends is best.`,
  'reference-crossed': () =>
    'The corners of the board are not in order: tap them one after the other round its edge.',
  'reference-mirrored': (say) =>
    `The taped distances do not fit where marks ${say.text('markNames')} stand in the photo. Two of them may be swapped: check which letter is which.`,
  'reference-too-small': () =>
    'The marks stand too close together in the photo to give a size. Spread them over the slab, or take the photo nearer.',
  'reference-small': (say) =>
    `The marks span only ${say.percent('share')} of the photo, so every click error grows. Spread them towards the slab’s ends if you can.`,
  'reference-to-one-side': () =>
    'Much of the slab lies outside the marks, where the photo is weakest. Put a mark near each end.',
  'reference-not-used': (say) =>
    `Distance ${say.text('distanceNames')} is not used: one of its marks is not placed on the photo.`,
  'reference-unsolvable': () =>
    'These marks and distances give no picture that makes sense. Check the distances, and that each letter stands where you taped it.',
  'length-alone': () =>
    'One known length alone does not tell how the photo was tilted. The program assumes the usual way of holding a phone, so the ± is wide. Tape two more lengths in other directions, or use four marks.',
  'tilt-assumed': () =>
    'These lengths tell the tilt of the photo only in part, so the ± is wide. Four marks with their distances, or a board, would fix it.',
  'slab-clipped': () =>
    'The slab reaches the edge of the photo. What lies outside cannot be measured: take the photo from farther away.',
  'board-corners-not-seen': () => 'Not all four corners of the board are placed on the photo yet.',
  'marks-too-few': (say) => `Too few marks (${say.count('count')}): place four.`,
  'distances-too-few': (say) =>
    `Some distances are missing: ${say.count('needed')} are needed, ${say.count('given')} are given. Mark ${say.text('markNames')} is still loose.`,
  'distances-impossible': (say) =>
    `Distance ${say.text('distanceNames')} cannot be right: it is longer than the way round by the other marks. Tape it again.`,
  'distance-unknown-mark': () =>
    'A taped distance names a mark that is no longer there. Remove it or tape it again.',
  'distance-not-positive': (say) => `Distance ${say.text('distanceNames')} must be more than nothing.`,
  'distance-disagrees': (say) =>
    `Distance ${say.text('distanceNames')} does not fit the others: taped ${say.length('tapedMm')}, by the rest it should be about ${say.length('solvedMm')}. Tape it again.`,
  'distances-disagree': (say) =>
    `The taped distances disagree, and one of these is wrong, the likeliest first: ${say.text('distanceNames')}. Tape ${say.text('distanceNames').split(', ')[0] ?? ''} again first.`,
  'tilt-too-steep': (say) =>
    `The photo looks along the slab too flatly (${say.angle('tiltRad')} off square). Far edges are weak: take it from higher up if you can.`,
  'focal-unlikely': () =>
    'The marks and distances fit only a camera that few phones have. A distance may be misread, or the photo was cropped.',

  'slab-not-dry': (say) =>
    `Not ready to pour: ${say.percent('share')} moisture, above the ${say.percent('limitFraction')} that you pour at. Dry it first.`,
  'slab-thickness-missing': () =>
    'The slab’s thickness is not known, so the resin cannot be worked out. Measure it and type it at Photo.',

  'outline-missing': () => 'The slab’s edge is not traced yet.',
  'outline-too-few-points': () =>
    'The outline has fewer than three points. Go on tracing, or start it again.',
  'outline-crosses-itself': (say) =>
    `The outline crosses itself between points ${say.count('edgeA')} and ${say.count('edgeB')}. Move one of them apart.`,
  'outline-no-area': () => 'The outline encloses nothing. Trace round the slab’s face.',
  'outline-beyond-horizon': () =>
    'Part of the outline lies above the slab’s horizon in the photo. Trace only the slab’s face.',
  'outline-cut-away': (say) =>
    `Cut back by ${say.length('cutBackMm')}, nothing is left of the slab. Cut back less, or check its size.`,
  'outline-cut-apart': (say) =>
    `Cut back by ${say.length('cutBackMm')}, the slab falls apart; only its largest part, ${say.area('leftAreaMm2')}, is planned with.`,
  'void-too-few-points': () => 'A void has fewer than three points. Go on tracing it, or remove it.',
  'void-crosses-itself': (say) =>
    `A void’s outline crosses itself between points ${say.count('edgeA')} and ${say.count('edgeB')}. Move one of them apart.`,
  'void-no-area': () => 'A void encloses nothing. Trace round it, or remove it.',
  'void-outside-slab': (say) => `Void ${say.text('traceName')} lies outside the slab. Move it, or remove it.`,
  'void-deeper-than-slab': (say) =>
    `Void ${say.text('traceName')} is said to be ${say.length('depthMm')} deep, but the slab is ${say.length('thicknessMm')} thick. It is taken as going right through.`,
  'stations-too-few': () => 'Measure at least two stations along the datum.',
  'stations-out-of-order': (say) =>
    `The station at ${say.length('alongMm')} does not lie beyond the one before it. Put the stations in order.`,
  'stations-edges-crossed': (say) =>
    `At station ${say.length('alongMm')} the two edges cross each other. Check left and right.`,

  'table-not-laid': () => 'The table is not laid on a slab yet.',
  'table-on-missing-slab': () => 'The slab that this table lay on is gone. Lay the table on another one.',
  'table-larger-than-slab': (say) =>
    `The table (${say.length('lengthMm')} × ${say.length('widthMm')}) is far larger than the slab (${say.length('slabLengthMm')} × ${say.length('slabWidthMm')}). Check its size.`,
  'table-on-defect': (say) =>
    `Defect ${say.text('traceName')} lies in the table with ${say.area('areaMm2')}. Move the table off it, or cut it out.`,
  'table-beside-figure': (say) =>
    `Figure ${say.text('traceName')} lies outside the table with ${say.percent('outsideFraction')} of it. Move the table over it if you want to keep it.`,
  'table-thicker-than-slab': (say) =>
    `The finished top is to be ${say.length('thicknessMm')} thick, but the slab is only ${say.length('slabThicknessMm')}.`,
  'table-thin-allowance': (say) =>
    `Only ${say.length('leftMm')} are left for flattening both faces. Measure how much the slab is cupped and twisted before you promise ${say.length('thicknessMm')}.`,
  'table-outline-unusable': () =>
    'The outline of this top crosses itself or encloses nothing. Mend its points.',
  'table-oversize-not-covered': (say) =>
    `The finished top is all wood, but ${say.area('areaMm2')} of its oversize lies beyond the slab’s edge and is cast in resin, to be trimmed off.`,
  'table-corner-radius': (say) =>
    `A corner radius of ${say.length('cornerRadiusMm')} does not fit: ${say.length('greatestMm')} at most.`,

  'cut-misses-piece': (say) =>
    `Cut ${say.text('cutName')} does not touch piece ${say.text('pieceName')}. Move it, or remove it.`,
  'cut-kerf-takes-all': (say) =>
    `Cut ${say.text('cutName')} leaves nothing of piece ${say.text('pieceName')} beyond its line: the kerf of ${say.length('kerfMm')} takes it all. Move it, or turn its waste side.`,
  'cuts-cross': (say) =>
    `Cut ${say.text('cutName')} is drawn across cut ${say.text('otherName')}. That one is made first, so this one divides only the piece on its own side of it.`,
  'cut-piece-unknown': (say) => `Cut ${say.text('cutName')} divides a piece that is no longer there.`,
  'piece-anchor-lost': (say) =>
    `Piece ${say.text('pieceName')} is no longer where it was: the table or a cut has moved over it. Pick it again, or take it out.`,
  'piece-anchor-shared': (say) =>
    `Pieces ${say.text('pieceName')} and ${say.text('otherName')} are now one and the same wood. Take one of them out.`,
  'piece-outside-table': (say) =>
    `Piece ${say.text('pieceName')} lies outside the blank, so it fills nothing. Move it into a gap.`,
  'pieces-overlap': (say) =>
    say.text('otherName') === ''
      ? `Piece ${say.text('pieceName')} lies on the slab’s own wood by ${say.area('areaMm2')}. Move it into the gap.`
      : `Pieces ${say.text('pieceName')} and ${say.text('otherName')} lie on each other by ${say.area('areaMm2')}. Move one of them.`,

  'resin-cast-thicker-than-slab': (say) =>
    `The cast (${say.length('castThicknessMm')}) is thicker than the slab (${say.length('slabThicknessMm')}), so resin floods the whole face. Check that this is what you want.`,
  'resin-cast-below-finished': (say) =>
    `The cast (${say.length('castThicknessMm')}) is thinner than the finished top (${say.length('thicknessMm')}): the gaps would not be full.`,
  'pour-nothing-to-fill': () => 'There is no gap to fill, so there is nothing to pour.',
  ...pourNoticeTexts,
  ...buildIssueTexts,
}
