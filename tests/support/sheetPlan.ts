import type { LengthDisplay } from '../../src/core/units'
import type { Sheet } from '../../src/core/drawing'
import { blankPlan, computePlan, type Option, type Plan, type Slab } from '../../src/core/plan'
import { buildCutSheets } from '../../src/core/plan/sheets/buildCutSheets'
import type { CutSheetRequest } from '../../src/core/plan/sheets/sheetInput'
import { sheetText } from '../../src/core/plan/text/en/sheet'
import { flatBox, flatOption, flatPx, flatSlab } from './flatPlan'

/** Outline of the slab below in its own frame, mm. */
export const SHEET_OUTLINE = [
  [-200, -150],
  [2000, -150],
  [2000, 750],
  [1400, 750],
  [1210, 650],
  [1190, 650],
  [1000, 750],
  [-200, 750],
] as const

/**
 * An invented job whose printed figures can be worked out by hand. Slab 2200 × 900 × 50 mm with a notch in its near
 * edge and one through void of 100 × 100 mm; table 1900 × 800 mm at (−50, −100), all sides filled, oversize 5 mm.
 *
 * The notch is 20 mm wide at its bottom (y = 650) and opens by 1.9 mm to each side for every mm. The blank's near side
 * (y = 705) crosses it from x = 1085.5 to 1314.5: ½ · (229 + 20) · 55 = 6847.5 mm²; the finished side (y = 700) from 1095
 * to 1305, 50 mm deep. Cast 50 mm: 0.342375 L at the edge, 0.5 L in the void, 0.842375 L together; with 10 % loss
 * 0.9266125 L, at 1080 kg/m³ 1.00074 kg.
 */
export function sheetPlan(
  changes: {
    readonly plan?: Partial<Plan>
    readonly option?: Partial<Option>
    readonly slab?: Partial<Slab>
  } = {},
): { readonly plan: Plan; readonly option: Option; readonly slab: Slab } {
  const slab: Slab = {
    ...flatSlab({
      outline: SHEET_OUTLINE.map(([x, y]) => flatPx(x, y)),
      voids: [{ ring: flatBox(400, 200, 500, 300), depthMm: null }],
    }),
    ...changes.slab,
  }
  const laid = flatOption(1900, 800, { xMm: -50, yMm: -100 })
  const side = { finish: 'filled', oversizeMm: 5 } as const
  const option: Option = {
    ...laid,
    table: { ...laid.table, sides: { start: side, end: side, far: side, near: side } },
    ...changes.option,
  }
  const plan: Plan = {
    ...blankPlan('plan', 'option'),
    name: 'Plain table',
    invented: true,
    ...changes.plan,
    slabs: [slab],
    options: [option],
  }
  return { plan, option, slab }
}

export const MM: LengthDisplay = { system: 'mm' }
export const INCH: LengthDisplay = { system: 'inch', fraction: 16 }

/** The sheets of a job. */
export function sheetsOf(
  job: ReturnType<typeof sheetPlan> = sheetPlan(),
  more: Partial<Pick<CutSheetRequest, 'display' | 'paper'>> = {},
): readonly Sheet[] {
  return buildCutSheets({
    ...job,
    result: computePlan(job.plan),
    display: MM,
    paper: 'a4',
    dateText: '14 March 2026',
    text: sheetText,
    ...more,
  })
}

/** Every text of a sheet, with plain spaces. */
export const wordsOf = (sheet: Sheet): string =>
  sheet.items
    .flatMap((item) => (item.kind === 'text' ? [item.text.replaceAll('\u00a0', ' ')] : []))
    .join('\n')
