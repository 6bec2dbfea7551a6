import type { ValueWords } from './sentence'
import { coverProblems } from './cover'
import { fillProblems } from './fill'
import { lostTexts } from './lost'

type Sentence = (say: ValueWords) => string

const quoted = (say: ValueWords): string => `“${say.text('text')}”`

const lengthProblems: Readonly<Record<string, Sentence>> = {
  'length-empty': () => 'Type a length, for example 2200, 2.2 m or 7\' 2 1/2".',
  'length-not-understood': (say) =>
    `${quoted(say)} is not a length the program can read. Try 2200, 2.2 m, 7' 2 1/2" or 86 1/2".`,
  'length-negative': (say) => `${quoted(say)} is less than nothing. Here a length must be positive.`,
  'length-zero-denominator': (say) => `${quoted(say)} has a fraction over zero.`,
  'length-mixed-units': (say) => `${quoted(say)} mixes millimetres and inches. Use one of them.`,
  'length-ambiguous-comma': (say) =>
    `${quoted(say)} may be read in two ways. Write thousands without a comma, and decimals with a point.`,
  'length-too-small': (say) =>
    `${say.length('valueMm')} is too small here: at least ${say.length('leastMm')}.`,
  'length-too-large': (say) =>
    `${say.length('valueMm')} is too large here: at most ${say.length('greatestMm')}.`,
}

/** The sentences for plain numbers, per cents and angles differ in their unit only. */
const numberProblems = (kind: 'number' | 'percent' | 'angle', unit: string, example: string) => ({
  [`${kind}-empty`]: () => `Type a number, for example ${example}.`,
  [`${kind}-not-understood`]: (say: ValueWords) => `${quoted(say)} is not a number. Try ${example}.`,
  [`${kind}-ambiguous-comma`]: (say: ValueWords) =>
    `${quoted(say)} may be read in two ways. Write thousands without a comma, and decimals with a point.`,
  [`${kind}-too-small`]: (say: ValueWords) =>
    `${quoted(say)} is too small here: at least ${say.text('least')}${unit}.`,
  [`${kind}-too-large`]: (say: ValueWords) =>
    `${quoted(say)} is too large here: at most ${say.text('greatest')}${unit}.`,
})

const moneyProblems: Readonly<Record<string, Sentence>> = {
  'money-empty': () => 'Type an amount, for example 48.50.',
  'money-not-understood': (say) => `${quoted(say)} is not an amount of money. Try 48.50.`,
  'money-negative': (say) => `${quoted(say)} is less than nothing.`,
  'money-ambiguous-comma': (say) =>
    `${quoted(say)} may be read in two ways. Write thousands without a comma, and cents after a point.`,
  'money-finer-than-cents': (say) => `${quoted(say)} is finer than a cent.`,
  'money-too-small': (say) => `${quoted(say)} is too small here.`,
  'money-too-large': (say) => `${quoted(say)} is too large here.`,
}

const photoProblems: Readonly<Record<string, Sentence>> = {
  'photo-empty': () => 'This file is empty. Choose another one.',
  'photo-truncated': () => 'This photo breaks off before its end. Copy it from the phone or camera again.',
  'photo-not-an-image': () =>
    'This file is neither a photo nor a saved job. Photos are JPEG, PNG or WebP; saved jobs end in .waneline.',
  'photo-unsupported': (say) =>
    `This is a ${say.text('format')} file, which not every browser can show. Save the photo as a JPEG and open that.`,
  'photo-too-large': (say) =>
    `This photo has ${say.count('megapixels')} megapixels; up to ${say.count('mostMegapixels')} can be worked on. A smaller copy would do: it is still much finer than a tape.`,
  'photo-file-too-large': (say) =>
    `This file is far too large for a photo (${say.count('megabytes')} MB). Choose another one.`,
  'photo-size-differs': () =>
    'This photo is not what its own header says. Open it elsewhere and save it anew as a JPEG.',
  'photo-unreadable': () =>
    'The browser cannot show this photo. It may be damaged; open it elsewhere and save it anew as a JPEG.',
  'photo-no-memory': () =>
    'There is not enough memory for this photo. Close other pages, or use a smaller photo.',
  'photo-not-open': () => 'The photo is not open any more. Load the page again; your job is kept.',
  'photo-view-too-large': () => 'This view of the photo is too large to be drawn. Zoom in a little.',
  'photo-worker-failed': () => 'Working on the photo failed. Your job is kept; try again.',
  'trace-worker-failed': () => 'Looking for the edge failed. Your job is kept; try again.',
  'trace-worker-crashed': () => 'Looking for the edge broke down and was started again. Your job is kept.',
  'trace-worker-ended': () => 'Looking for the edge was stopped.',
  'trace-nothing-found': () => 'No wood was found there. Draw a longer stroke across the slab.',
  'photo-worker-ended': () => 'Work on the photo was stopped.',
  'photo-worker-crashed': () => 'Working on the photo broke down and was started again. Your job is kept.',
  'hour-not-understood': (say) => `${quoted(say)} is not a time. Try day 2, 08:30, or the clock alone.`,
  'day-not-understood': (say) => `${quoted(say)} is not a day. Try 2027-03-14.`,
  'pour-worker-failed': () => 'Working out the pour failed. Your job is kept; change a figure to try again.',
  'pour-worker-crashed': () =>
    'Working out the pour broke down. Your job is kept; change a figure to try again.',
  'build-worker-failed': () =>
    'Working out form and price failed. Your job is kept; change a figure to try again.',
  'build-worker-crashed': () =>
    'Working out form and price broke down. Your job is kept; change a figure to try again.',
  'photo-worker-unsupported': () =>
    'This browser is too old to work on photos in the background. Use a newer one.',
}

const planProblems: Readonly<Record<string, Sentence>> = {
  'plan-not-a-plan': () => 'This file is neither a photo nor a saved job.',
  'plan-broken-json': (say) =>
    `This saved job is damaged${say.text('at') === '' ? '' : ` (at ${say.text('at')})`} and cannot be read. What you had open stays as it is.`,
  'plan-newer-version': (say) =>
    `This job was saved by a newer version of the program (format ${say.count('version')}; this one reads up to ${say.count('readable')}). Load the page again to get it; what you had open stays as it is.`,
  'plan-file-damaged': () =>
    'This saved job is damaged and cannot be opened. What you had open stays as it is.',
  'plan-file-too-large': () => 'This file holds far more than a job ever does, so it was not opened.',
  'plan-file-no-plan': () => 'This is a packed file, but there is no job in it.',
  'plan-not-stored': () => 'This job is no longer in this browser.',
  'plan-here-already': (say) =>
    `This plan is here already, and differs from the file: here it was saved ${say.text('here')}, the file ${say.text('file')}. Which do you want to keep?`,
  'plan-open-elsewhere': () =>
    'This job is open in another window too. Work in one of them only; nothing is overwritten without asking.',
  'unsaved-kept-as-copy': (say) =>
    `“${say.text('name')}” had changes that were not saved when its window was closed, and another window has saved it since. They are kept as a copy.`,
  'plan-beyond-repair': (say) =>
    `This saved job has been changed so much that it cannot be read (${say.text('at')}). What you had open stays as it is.`,
}

const programProblems: Readonly<Record<string, Sentence>> = {
  'demo-unreachable': () =>
    'The demo job could not be fetched. Are you offline? You can start with your own photo.',
  'work-failed': (say) => `That did not work (${say.text('reason')}). Your job is kept; try again.`,
  'photos-not-in-file': (say) =>
    `Saved, but ${say.count('count')} of its photos are not in this browser and so not in the file.`,
}

const storageProblems: Readonly<Record<string, Sentence>> = {
  'storage-unavailable': () =>
    'This browser keeps nothing for this page (a private window, or storage switched off). Save your job to a file before you leave.',
  'storage-full': () =>
    'Not saved: this browser has no room left. Save the job to a file, then delete old jobs.',
  'storage-failed': () => 'Not saved: the browser’s storage failed. Save the job to a file to be safe.',
}

/** What was typed or opened and could not be accepted: why, and what to do. */
export const problemTexts: Readonly<Record<string, Sentence>> = {
  'text-empty': () => 'This needs a name.',
  ...lengthProblems,
  ...numberProblems('number', '', '12.5'),
  ...numberProblems('percent', ' %', '12.5 %'),
  ...numberProblems('angle', '°', '12.5°'),
  ...moneyProblems,
  ...photoProblems,
  ...coverProblems,
  ...fillProblems,
  ...planProblems,
  ...storageProblems,
  ...programProblems,
  ...lostTexts,
}

export const unknownProblem = (code: string): string => `This could not be accepted (${code}).`
