/** The help page. */
export const helpTexts = {
  'help-title': 'Help',
  'help-lead':
    'From one photo of a slab to a cut sheet: does the slab cover the table, where to cut it, how much resin the gaps take. The stages stand in the order of the work; you can go back to any of them at any time, and every number follows.',
  'help-photo':
    'Stick four crosses of tape on the slab, near its ends, and take one photo from as high up as you can.',
  'help-scale':
    'Tap the four crosses and type the distances that you taped between them. Or lay a board of known size on the slab and tap its corners.',
  'help-trace': 'Tap round the edge of the top face. Then trace the holes and cracks.',
  'help-table':
    'Type the size that was ordered, say how each side is finished, lay the table down and move it about.',
  'help-cuts': 'Read where to cut. Lay an offcut into the gap if it saves resin. Say how thick the cast is.',
  'help-pour':
    'Put in the figures of your product’s sheet and your room. Read how deep, how hot and when, and put it in your calendar.',
  'help-paper': 'Print the cut sheet, and check the bar on the paper with a rule.',
  'help-lengths': 'Lengths as you say them',
  'help-lengths-how':
    'Type 2200, 2.2 m, 220 cm, 7\' 2 1/2", 86 1/2" or 35 3/8. A number without a unit is in the unit shown, which you choose in the menu. In a field the arrow keys step by 1 mm, with Shift by 10, with Alt by 0.1; in inches by 1/16, 1 and 1/32.',
  'help-keys': 'Keys',
  'help-keys-where':
    'Plain letters and signs work while the picture has the focus: click it, or go to it with Tab.',
  'keys-edit': 'Take back',
  'keys-job': 'Jobs',
  'keys-look': 'Views',
  'keys-tool': 'Tools',
  'keys-help': 'Help',
  'keys-canvas': 'In the picture',
  'help-canvas-move': 'Move what is selected',
  'help-canvas-move-key': 'Arrow keys',
  'help-canvas-coarse': 'Ten times as far',
  'help-canvas-coarse-key': 'Shift + arrow',
  'help-canvas-fine': 'A tenth as far',
  'help-canvas-fine-key': 'Alt + arrow',
  'help-canvas-turn': 'Turn what is selected',
  'help-canvas-turn-key': '[ and ]',
  'help-canvas-set': 'Set a point at the crosshair',
  'help-canvas-set-key': 'Enter',
  'help-canvas-close': 'Close the trace',
  'help-canvas-close-key': 'Enter',
  'help-canvas-back': 'Back out one level',
  'help-canvas-back-key': 'Esc',
  'help-canvas-delete': 'Take away what is selected',
  'help-canvas-delete-key': 'Delete',
  'help-care': 'Before you cut or pour',
  'help-care-text':
    'All figures come from a photo and are estimates. Check every line with tape and straightedge before you cut. For pour depth, heat, mixing and protection the resin’s own data sheet decides; for tools their own instructions; for anything built in, the rules of the place where it stands.',
  'help-privacy': 'Photos and jobs stay in this browser. Nothing is sent anywhere.',
} as const
