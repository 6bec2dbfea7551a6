/** Words on and about the canvas. */
export const canvasTexts = {
  'canvas-label-photo': 'Photo of the slab',
  'canvas-label-above': 'The slab from above, to scale',
  'canvas-label-table': 'The table from above, to scale',
  'canvas-help':
    'Plus and minus zoom, zero shows everything, arrow keys move the picture. With a tool that sets points, arrow keys move a cross and Enter sets a point there. What is selected is moved by the arrow keys: one step, ten with Shift, a tenth with Alt. Square brackets turn it. Escape goes back a step.',

  'canvas-spare': ({ length }: { length: string }) => `${length} to spare`,
  'canvas-short': ({ length }: { length: string }) => `${length} short`,
  'canvas-view-photo': 'Photo',
  'canvas-view-above': 'From above',
  'canvas-view-table': 'Table top',
  'canvas-zoom-in': 'Zoom in',
  'canvas-zoom-out': 'Zoom out',
  'canvas-fit': 'Show all',
  'canvas-close-trace': 'Close it',
  'canvas-take-back': 'Take back a point',
  'canvas-take-back-short': 'Take back',
  'canvas-turn-over': 'Turn over',
  'canvas-take-out': 'Back to the tray',
  'canvas-lay-in': 'Lay it in the largest gap',

  'canvas-hint-mark': 'Tap a mark’s middle, or hold and drag to aim with the loupe.',
  'canvas-hint-finger': 'Held, the cross stands above your finger; a short tap sets it right under it.',
  'canvas-hint-rule-unsized': 'Type the rule’s length and thickness first.',
  'canvas-hint-board-unsized': 'Type the board’s length, width and thickness first.',
  'canvas-hint-board': (values: {
    readonly corner: string
    readonly length: string
    readonly width: string
  }) =>
    `Board ${values.length} × ${values.width}: tap corner ${values.corner} of 4. Start at one end of a long side and go round.`,
  'canvas-hint-rule': (values: { readonly end: string; readonly length: string }) =>
    `Rule or batten, ${values.length}: tap end ${values.end} of 2, in the middle of its width.`,
  'canvas-hint-line': 'Tap three or more points along something straight: a chalk line, a track.',
  'canvas-hint-line-drawing': (values: { readonly points: string }) =>
    `${values.points} set. Three or more tell the lens’s bow; Enter ends the line.`,
  'canvas-line-done': 'Line is done',
  'canvas-hint-outline-start':
    'Tap along the edge of the top face. Enter, or a tap on the first point, closes it.',
  'canvas-hint-void-start': 'Tap round a hole or crack. Enter, or a tap on the first point, closes it.',
  'canvas-hint-drawing': (values: { readonly points: string }) =>
    `${values.points} set. Enter, or a tap on the first one, closes it.`,
  'canvas-hint-outline-edit':
    'Drag a point to move it, tap the line to add one, delete the selected one with the Delete key.',
  'canvas-hint-datum': 'Drag the two ends of the datum line.',
  'canvas-hint-datum-start': 'Tap the two ends of the chalked datum line.',
  'canvas-hint-footprint': 'Drag the table, or turn it by the round handle.',
  'canvas-hint-footprint-start': 'Tap the slab where the middle of the table is to lie.',
  'canvas-hint-piece': 'Drag an offcut onto the table. Turn it by the round handle.',
  'canvas-cross': (values: { readonly x: string; readonly y: string }) =>
    `Cross at ${values.x}, ${values.y} px`,
  'canvas-points': (values: { readonly count: number }) =>
    values.count === 1 ? '1 point' : `${values.count} points`,

  'canvas-empty-no-slab': 'Open a photo of a slab to begin.',
  'canvas-empty-no-photo': 'This slab was measured without a photo. See it from above.',
  'canvas-empty-no-stations': 'Type at least two stations: the slab is then drawn here, to scale.',
  'canvas-empty-no-scale':
    'The view from above needs the true size first: place four marks and type the distances between them.',
  'canvas-empty-no-table': 'Lay the table on the slab first; then its offcuts can be laid into the gaps.',
  'canvas-photo-opening': 'Opening the photo …',
  'canvas-photo-lost': 'The photo itself is not kept in this browser. Marks and traces are still here.',
  'canvas-tray': 'Offcuts not laid yet',

  'canvas-mark': (values: { readonly name: string }) => `Mark ${values.name}`,
  'canvas-datum-from': 'Datum line, start',
  'canvas-datum-to': 'Datum line, end',
  'canvas-datum': 'Datum',
  'canvas-outline': 'Outline',
  'canvas-void': (values: { readonly number: string }) => `Void ${values.number}`,
  'canvas-crack': (values: { readonly number: string }) => `Crack ${values.number}`,
  'canvas-bark': (values: { readonly number: string }) => `Bark ${values.number}`,
  'canvas-defect': (values: { readonly number: string }) => `Defect ${values.number}`,
  'canvas-figure': (values: { readonly number: string }) => `Figure ${values.number}`,
  'canvas-trace-point': (values: { readonly trace: string; readonly number: string }) =>
    `${values.trace}, point ${values.number}`,
  'canvas-table': 'Table',
  'canvas-table-size': (values: { readonly length: string; readonly width: string }) =>
    `Table ${values.length} × ${values.width}`,
  'canvas-turn': 'Turn handle',
  'canvas-cut': (values: { readonly number: string }) => `Cut ${values.number}`,
  'canvas-cut-end': (values: { readonly along: string; readonly offset: string }) =>
    `${values.along} along, ${values.offset}`,
  'canvas-board-name': (values: { readonly number: string }) => `Board ${values.number}`,
  'canvas-rule-name': (values: { readonly number: string }) => `Rule ${values.number}`,
  'canvas-line': (values: { readonly number: string }) => `Straight line ${values.number}`,
  'canvas-line-point': (values: { readonly number: string; readonly point: string }) =>
    `Straight line ${values.number}, point ${values.point}`,
  'canvas-offcut': (values: { readonly name: string }) => `Offcut ${values.name}`,

  'say-selected': (values: { readonly what: string }) => `${values.what} selected.`,
  'say-selected-size': (values: { readonly what: string; readonly length: string; readonly width: string }) =>
    `${values.what} selected, ${values.length} by ${values.width}.`,
  'say-nothing-selected': 'Nothing selected.',
  'say-mark-set': (values: { readonly name: string }) => `Mark ${values.name} set.`,
  'say-mark-moved': (values: { readonly name: string }) => `Mark ${values.name} moved.`,
  'say-refined': (values: { readonly names: string }) =>
    `${values.names}: moved to its middle, as the photo shows it.`,
  'say-not-refined': (values: { readonly names: string }) =>
    `${values.names}: not sure what was meant, left as clicked.`,
  'say-line-refined': 'Straight line laid onto the line in the photo.',
  'say-line-not-refined': 'No clear line was found in the photo; the points are left as set.',
  'say-removed': 'Removed.',
  'say-point-set': (values: { readonly number: string }) => `Point ${values.number} set.`,
  'say-point-moved': (values: { readonly number: string }) => `Point ${values.number} moved.`,
  'say-point-added': (values: { readonly number: string }) => `Point ${values.number} added.`,
  'say-point-taken-back': (values: { readonly count: number }) =>
    `Last point taken back, ${values.count} left.`,
  'say-points-missing': (values: { readonly count: number }) =>
    `A closed line needs at least 3 points; ${values.count} so far.`,
  'say-trace-closed': (values: { readonly points: number }) => `Closed with ${values.points} points.`,
  'say-trace-dropped': 'Points let go. Undo brings them back.',
  'say-outline-exists': 'This slab has its outline. Drag its points, or remove it first to trace it afresh.',
  'say-outside-photo': 'That is beside the photo.',
  'say-board-unsized': 'Type the board’s length, width and thickness first.',
  'say-corner-set': (values: { readonly number: string }) => `Corner ${values.number} of 4 set.`,
  'say-board-laid': (values: { readonly length: string; readonly width: string }) =>
    `Board laid, ${values.length} by ${values.width}.`,
  'say-rule-laid': (values: { readonly length: string }) => `Rule laid, ${values.length}.`,
  'say-line-drawn': (values: { readonly points: number }) =>
    `Straight line drawn with ${values.points} points.`,
  'say-datum-started': 'Start of the datum line set; now its end.',
  'say-datum-set': 'Datum line set.',
  'say-table-laid': 'Table laid on the slab.',
  'say-table-moved': 'Table moved.',
  'say-piece-laid': 'Offcut laid on the table.',
  'say-piece-moved': 'Piece moved.',
  'say-piece-returned': 'Piece is back in the tray.',
  'say-turned-over': 'Piece turned over.',
} as const
