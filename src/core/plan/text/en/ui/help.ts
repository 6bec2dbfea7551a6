/** The help page. */
export const helpTexts = {
  'help-title': 'Help',
  'help-lead':
    'From one photo of a slab to a cut sheet: does the slab cover the table, where to cut it, how much resin the gaps take. The stages stand in the order of the work; you can go back to any of them at any time, and every number follows.',
  'help-slabs':
    'Put every slab that could do side by side, by photo or by three lengths of tape, and see which carries the table.',
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
  'help-form':
    'Read what the form takes and how its sheets are sawn, what everything weighs, and how the wood will move.',
  'help-price':
    'Put in your rates once. Read what it costs and what the client pays, and set the order of work.',
  'help-paper': 'Print the cut sheet, and check the bar on the paper with a rule.',
  'help-words': 'Words of the trade',
  'word-live-edge': 'Live edge',
  'word-live-edge-is': 'The edge of the slab as the tree grew it, without its bark.',
  'word-datum': 'Datum',
  'word-datum-is':
    'A straight chalk line down the slab. Everything is measured along it and square off it, so that nothing hangs on a wavy edge.',
  'word-kerf': 'Kerf',
  'word-kerf-is': 'The width of wood that the saw turns to dust. It is taken from the waste side.',
  'word-blank': 'Blank',
  'word-blank-is': 'The top as it comes out of the form: the finished size and its oversize on every side.',
  'word-oversize': 'Oversize',
  'word-oversize-is': 'What stands over the finished size and goes in the last trim.',
  'word-offcut': 'Offcut',
  'word-offcut-is': 'Wood that a cut takes off the slab. Laid into a gap it saves resin.',
  'word-void': 'Void',
  'word-void-is': 'A hole, crack or rotten place inside the slab that resin fills.',
  'word-joint': 'Joint',
  'word-joint-is': 'The band of resin between two pieces of wood.',
  'word-form': 'Form',
  'word-form-is': 'The box that the wood lies in while the resin is poured.',
  'word-pour': 'Pour',
  'word-pour-is': 'One layer of resin. The next one follows once it has gelled.',
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
