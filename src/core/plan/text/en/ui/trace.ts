import { counted } from '../counted'

/** Finding, following and mending the edge, on the picture and beside it. */
export const traceTexts = {
  'tool-wood': 'Mark wood',
  'tool-not-wood': 'Mark not wood',
  'tool-proposals': 'Judge proposals',
  'tool-follow': 'Follow the edge',

  'canvas-hint-wood': 'Draw a stroke along the middle of the wood. The outline is proposed from it.',
  'canvas-hint-not-wood': 'Draw a stroke, or tap, where the outline takes in what is not wood.',
  'tool-push': 'Push the edge',
  'tool-smooth': 'Smooth a stretch',
  'tool-straighten': 'Straighten a stretch',
  'tool-redraw': 'Redraw a stretch',
  'canvas-hint-push': 'Drag the edge with the round tool. Square brackets change its size.',
  'canvas-hint-smooth': 'Tap the two ends of a stretch. What looks ragged at this zoom is smoothed.',
  'canvas-hint-straighten': 'Tap the two ends of a stretch that is straight, such as a sawn end.',
  'canvas-hint-redraw':
    'Tap the line where the new stretch begins, lead it, and tap the line again where it ends.',
  'push-size': 'Size of the round tool',
  'canvas-hint-proposals': 'Tap a proposal; accept it as a void, or decline it.',
  'canvas-hint-follow':
    'Tap a point on the edge and move along it: the line clings to it. A tap pins it, Shift goes straight, Enter closes it.',
  'canvas-follow': 'Cling to the edge',
  'canvas-take-back-stretch': 'Take back a stretch',

  'stroke-take-back': 'Take back a stroke',
  'stroke-take-back-short': 'Take back',
  'outline-accept': 'Accept outline',
  'outline-discard': 'Discard it',
  'proposal-accept': 'Accept',
  'proposal-decline': 'Decline',
  'proposal-name': ({ number }: { readonly number: string }) => `Proposal ${number}`,

  'proposal-void': ({ number }: { readonly number: string }) => `Proposal ${number}: a hole`,
  'proposal-crack': ({ number }: { readonly number: string }) => `Proposal ${number}: a crack`,

  'job-finding-outline': 'Looking for the edge',
  'job-finding-voids': 'Looking for voids',
  'job-preparing-edge': 'Getting the photo ready',

  'say-stroke-started': 'The stroke begins here; now its end.',
  'say-stroke-set': ({ number }: { readonly number: string }) =>
    `Stroke ${number} drawn. Looking for the edge.`,
  'say-stroke-taken-back': ({ count }: { readonly count: number }) =>
    `Last stroke taken back, ${count} left.`,
  'say-outline-proposed': ({ points }: { readonly points: number }) =>
    `Outline proposed with ${points} points.`,
  'say-outline-accepted': ({ points }: { readonly points: number }) =>
    `Outline accepted with ${points} points.`,
  'say-outline-discarded': 'Proposal let go. The outline is as it was.',
  'say-voids-proposed': ({ count }: { readonly count: number }) =>
    count === 0 ? 'No voids found.' : `${counted(count, 'void', 'voids')} proposed. Judge them one by one.`,
  'say-proposal-chosen': ({ number }: { readonly number: string }) => `Proposal ${number}.`,
  'say-void-accepted': ({ left }: { readonly left: number }) => `Accepted. ${left} left to judge.`,
  'say-void-declined': ({ left }: { readonly left: number }) => `Declined. ${left} left to judge.`,
  'say-edge-mended': 'Line mended.',
  'say-edge-would-cross': 'That would make the line cross itself; it is left as it was.',
  'say-edge-missed': 'There is no line there. Tap on one.',
  'say-stretch-begun': 'The stretch begins here; now its end.',
  'say-stretch-pinned': 'Line pinned.',
  'say-stretch-taken-back': 'Last stretch taken back.',
} as const
