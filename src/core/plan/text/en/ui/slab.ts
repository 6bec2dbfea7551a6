/** The stages Photo, Size and Edge. */
export const slabTexts = {
  'photo-slab': 'The slab',
  'photo-slab-name': 'Name',
  'photo-slab-tag': 'Tag or number',
  'photo-slab-species': 'Species',
  'photo-slab-thickness': 'Thickness as it lies',
  'photo-slab-thickness-hint': 'Measured at its edge. The photo cannot tell it, and the resin hangs on it.',
  'photo-slab-not-measured': 'not measured yet',
  'photo-go-on': 'Go on to its size',
  'photo-slab-price': 'Price',
  'photo-file': 'The photo',
  'photo-location-removed': 'Where it was taken was removed from the file; the photo stays on this device.',
  'photo-file-name': 'File',
  'photo-file-size': 'Size',
  'photo-pixels': ({ width, height, megapixels }: { width: string; height: string; megapixels: string }) =>
    `${width} × ${height}, ${megapixels} MP`,
  'guide-title': 'How to take a photo that can be measured',
  'guide-lay': 'Lay the slab flat, face up, or stand it and take it from the front.',
  'guide-marks': 'Stick four to eight round dots or crosses of tape on it, near its ends and edges.',
  'guide-line':
    'Chalk a straight line along the slab, off its middle: the program takes the bow of the lens out by it.',
  'guide-tape': 'Tape the distances between the marks: four sides and both diagonals of four marks.',
  'guide-stand': 'Stand high and square on: on a ladder or bench, safely held, the phone over the middle.',
  'guide-whole': 'The whole slab in the picture, with some floor all round. No zoom, no wide angle.',
  'guide-flat': 'Lay a straightedge and winding sticks on it, and write down what they show.',
  'photo-sharp': 'The photo is sharp.',
  'photo-blurred':
    'The photo looks shaken or out of focus: marks and edges cannot be found exactly. Take it again, held still.',
  'photo-none-yet': 'There is no photo of a slab in this job yet.',

  'size-reference': 'What is known',
  'size-reference-marks': 'Taped distances between marks',
  'size-reference-board': 'A board lying on the slab',
  'size-reference-rule': 'Rules or battens of known length',
  'size-marks': 'Marks',
  'size-marks-note':
    'Four marks near the ends of the slab. Tap where they are in the photo; drag one to set it exactly.',
  'size-column-mark': 'Mark',
  'size-column-height': 'Above the face',
  'size-mark-name': ({ name }: { name: string }) => `Name of mark ${name}`,
  'size-mark-height': ({ name }: { name: string }) => `Height of mark ${name} above the face`,
  'size-place-mark': 'Place a mark',
  'size-distances': 'Taped distances',
  'size-distances-note':
    'Five make a size, the sixth is a check. Where they disagree, those that may be wrong are marked.',
  'size-column-between': 'From – to',
  'size-column-taped': 'Taped',
  'size-column-found': 'Found',
  'size-column-difference': 'Off by',
  'size-taped': ({ names }: { names: string }) => `Taped distance ${names}`,
  'size-not-taped': 'not taped',
  'size-one-pixel': 'One pixel of the photo is',

  'board-title': 'Board of known size',
  'board-note':
    'Any true rectangle that lies flat on the slab: the bigger the better. Type its size, then tap its corners in order.',
  'own-reference': ({ size }: { size: string }) => `Mine: ${size}`,
  'own-keep': 'Keep as mine',
  'own-forget': ({ size }: { size: string }) => `Forget ${size}`,
  'own-forget-short': 'Forget',
  'board-check': 'Tape one long distance to check',
  'board-check-note':
    'Place two marks far apart on the slab, tape between them and type it. If it disagrees, the board’s size or a corner is wrong.',
  'board-length': 'Length',
  'board-width': 'Width',
  'board-thickness': 'Thickness',
  'board-tap-corners': 'Tap its four corners',

  'click-none': 'As clicked',
  'click-refined': 'Refined: on its middle in the photo',
  'click-unsure': 'Left as clicked: not sure what was meant',
  'click-kept': 'Left as clicked',
  'click-leave': 'Leave the click',

  'rule-title': 'Rules or battens',
  'rule-note':
    'Anything straight of known length that lies flat on the slab: two of them, one along and one across. One alone only tells the size if the photo is from straight above.',
  'rule-first': 'The first one',
  'rule-next': 'The next one',
  'rule-length': 'Length',
  'rule-thickness': 'Thickness',
  'rule-tap-ends': 'Tap its two ends',

  'line-title': 'Something straight',
  'line-note':
    'Every lens bows straight lines a little. A chalk line along the slab, well off its middle, lets the program take the bow out: tap three or more points along it.',
  'line-draw': 'Tap along a straight line',
  'line-points': ({ count }: { count: number }) => `${count} points`,

  'flat-title': 'How flat it is',
  'flat-note': ({ unknown }: { unknown: string }) =>
    `Tape cannot tell bow or twist, and an edge that stands high looks further out. As long as nothing is measured, the program reckons with ${unknown} either way.`,
  'flat-known': 'Bow and twist of the face',
  'flat-unknown': 'Not measured',
  'flat-read': 'Measured',
  'flat-bow': 'Bow under a straightedge',
  'flat-bow-hint': 'Along the middle: plus when the middle stands high, minus when it is hollow.',
  'flat-sticks': 'Winding sticks, far end',
  'flat-sticks-hint':
    'How much the far stick stands out over the near one, across the slab’s width. Plus: its right end is high as you look along the datum.',

  'sure-title': 'How sure it is',
  'sure-note':
    'Every ± is two standard deviations: of 20 such figures, 19 lie within. It counts clicks, tape, lens and what is not known of bow and twist.',
  'sure-help': ({ advice, now, after }: { advice: string; now: string; after: string }) =>
    `${advice} Long lengths over the slab then come to ${after} instead of ${now}.`,
  'sure-tape': ({ from, to }: { from: string; to: string }) =>
    `Most help now: tape the distance between marks ${from} and ${to}.`,
  'sure-straight-line':
    'Most help now: chalk a straight line along the slab, well off its middle, and tap along it.',
  'sure-read-flatness':
    'Most help now: lay a straightedge and winding sticks on it, and type what they show.',
  'sure-map': ({ bare, steps }: { bare: string; steps: string }) =>
    `The closer the lines, the less sure a place is against the datum line. Without lines: better than ± ${bare}. They grow closer from ± ${steps} on.`,
  'sure-nothing': 'Nothing that is easily measured would help much more.',

  'datum-title': 'Datum line',
  'datum-note': 'The line that you chalk on the slab. All cuts are set out along it and square to it.',
  'datum-length': 'Between its two ends',
  'datum-draw': 'Draw the datum line',

  'size-by-stations': 'This slab is measured by tape at stations: its size comes from there. See Edge.',
  'stations-title': 'Stations',
  'stations-note':
    'Chalk a datum line down the slab. At stations along it, tape from the line to the left and to the right edge, square to it: at both ends, and closer where the edge bends. An edge on the other side of the line is minus.',
  'station-column': 'No.',
  'station-along': 'Along',
  'station-left': 'To the left',
  'station-right': 'To the right',
  'station-field': ({ number, what }: { number: string; what: string }) => `Station ${number}: ${what}`,
  'station-name': ({ number }: { number: string }) => `station ${number}`,
  'station-next': 'The next station',
  'station-add': 'Add it',

  'edge-outline': 'Outline of the face',
  'edge-outline-edit': 'Drag a point to move it, tap the edge to add one, Delete takes one away.',
  'edge-edit-outline': 'Change points',
  'edge-remove-outline': 'Remove outline',
  'edge-length': 'Length along the datum',
  'edge-width': 'Width across it',
  'edge-round': 'All round',
  'edge-gross-area': 'Area with voids',
  'edge-wood-area': 'Wood',
  'edge-area': 'Area',
  'edge-voids': 'Within the outline',
  'edge-voids-note':
    'Holes, cracks and bark that resin is to fill; defects that the table is not to have, and figure that it is to have.',
  'edge-start-void': 'Trace a void or place',
  'edge-cut-back': 'Decayed wood cut back',
  'edge-cut-back-hint':
    'All along the edge, from the traced line inwards. What is left is the slab; its line is drawn dash and dot.',
  'edge-meaning-of': ({ name }: { name: string }) => `What ${name} is`,
  'edge-meaning-void': 'Void',
  'edge-meaning-crack': 'Crack',
  'edge-meaning-bark': 'Bark',
  'edge-meaning-defect': 'Defect to keep out',
  'edge-meaning-figure': 'Figure to keep',
  'edge-bark-note': 'Never counted as wood: it is dug out, right through.',
  'edge-defect-note': 'Stays wood. You are told when it lies in the table.',
  'edge-figure-note': 'Stays wood. You are told when it lies outside the table.',
  'edge-void-depth-of': ({ name }: { name: string }) => `How deep is ${name}`,
  'edge-void-through': 'Right through',
  'edge-void-partial': 'To a depth',
  'edge-void-depth': 'Depth',
  'edge-points': ({ count }: { count: string }) => `Points: ${count}`,
  'edge-point': ({ number }: { number: string }) => `Point ${number}`,
  'edge-point-along': 'Along the datum',
  'edge-point-off': 'Off the datum',
  'edge-point-delete': 'Delete point',

  'objects-title': ({ count }: { count: string }) => `All that is on the slab (${count})`,
  'object-in-gap': ({ name }: { name: string }) => `Offcut ${name}, in the gap`,
} as const
