/** Words of the paper stage: which sheets, what is taken away as files, templates, the client's picture. */
export const paperTexts = {
  'paper-a3': 'A3',
  'paper-tabloid': 'Tabloid, 11 × 17 in',

  'sheets-chosen': 'Sheets',
  'sheet-kind-slab': 'Slab, to be taped before cutting',
  'sheet-kind-cuts': 'Cuts, drawn and listed',
  'sheet-kind-table': 'Table and resin',
  'sheet-kind-mix': 'Pour and mix card',
  'sheet-kind-approval': 'For the client to sign',
  'sheet-kind-care': 'Care, for the client',

  'take-away': 'Take away',
  'take-away-note':
    'Drawings in true size for other programs, and lists. Figures are estimates, there as here.',
  'take-away-frame': 'Drawn from',
  'take-away-frame-slab': 'The slab’s datum',
  'take-away-frame-table': 'The top’s corner',
  'take-away-svg': 'Drawing, SVG',
  'take-away-dxf': 'Drawing, DXF in mm',
  'take-away-cuts': 'Cuts, CSV',
  'take-away-parts': 'Parts, CSV',
  'take-away-json': 'All results, JSON',
  'take-away-none': 'There is nothing to take away yet: the slab needs its edge and a table laid on it.',

  template: 'Full-size template',
  'template-note':
    'Pages in true size, to be taped together by their crosses. Leave the lengths empty for all of it.',
  'template-frame': 'Measured from',
  'template-frame-slab': 'The slab’s datum',
  'template-frame-table': 'The top’s corner',
  'template-from': 'From',
  'template-to': 'To',
  'template-lay-out': 'Lay out the pages',
  'template-print': 'Print the template',
  'template-put-away': 'Put it away',
  'template-none': 'Nothing lies in that stretch.',
  'template-pages': ({ pages }: { pages: string }) =>
    `Pages: ${pages}. Until it is put away, the template is what prints.`,

  picture: 'Picture for the client',
  'picture-impression': 'An impression: wood and resin will differ from it in colour, grain and depth.',
  'picture-resin': 'Resin',
  'picture-clear': 'Clear',
  'picture-tinted': 'Tinted',
  'picture-opaque': 'Opaque',
  'picture-pearl': 'Pearl',
  'picture-colour': 'Colour',
  'picture-together': 'All options together, up to three',
  'picture-screen': 'PNG for the screen',
  'picture-print': 'PNG for print',
  'picture-failed': 'The picture could not be drawn: the photo is not here, or its worker stopped.',

  'hand-over': 'Hand over',
  'hand-over-note':
    'Plan and photos in one file, for the phone or the shop’s computer. No server takes part.',
  'hand-over-share': 'Share the plan',
  'hand-over-file': 'Save the plan to a file',
} as const
