/** How jobs and the program itself are kept: offline, newer versions, room in the browser, earlier versions of a job. */
export const keepingTexts = {
  'newer-ready': 'A newer version of Waneline is ready. Your job is saved first.',
  'newer-use': 'Use it now',
  'newer-later': 'Later',
  'kept-offline': 'Waneline opens on this device without a network from now on.',

  'saved-fleeting': 'Kept only until this window is closed. Save the job to a file.',

  'action-show-versions': 'Earlier versions of this job',
  'versions-title': 'Earlier versions of this job',
  'versions-note':
    'While you work, versions are kept: many of the last minutes, fewer of the days before. Going back to one is a step that you can undo.',
  'versions-none': 'No earlier version is kept yet. One is kept whenever the job is saved.',
  'versions-use': 'Go back to it',
  'versions-is-now': 'As it is now',
  'versions-count': ({ slabs, cuts, pieces }: { slabs: number; cuts: number; pieces: number }) =>
    `${slabs === 1 ? '1 slab' : `${slabs} slabs`}, ${cuts === 1 ? '1 cut' : `${cuts} cuts`}, ${
      pieces === 1 ? '1 offcut laid' : `${pieces} offcuts laid`
    }`,

  'room-used': ({ used, most }: { used: string; most: string }) =>
    `Waneline uses ${used} here; this browser allows about ${most}.`,
  'room-kept': 'The browser has agreed to keep your jobs.',
  'room-may-go':
    'The browser may clear them when the device runs short of room. A job saved to a file is safe.',
  'room-megabytes': ({ value }: { value: string }) => `${value} MB`,
  'room-gigabytes': ({ value }: { value: string }) => `${value} GB`,

  'twin-both': 'Keep both, named by date',
  'twin-file': 'Keep the file’s alone',
  'twin-here': 'Keep the one here alone',
  'twin-leave': 'Leave both as they are',
} as const
