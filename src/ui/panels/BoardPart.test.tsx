// @vitest-environment happy-dom
import { cleanup, render, screen } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import demo from '../../../demo-data/library-table/plan.json'
import { en, parsePlan, type Slab } from '../../core/plan'
import { readPreferences } from '../../state/preferences'
import { planStore, showPlan } from '../../state/planStore'
import { lookAtPlan, sessionStore } from '../../state/sessionStore'
import { bringTexts } from '../text/t'
import { BoardPart } from './BoardPart'
import { RulePart } from './RulePart'

function demoSlab(): Slab {
  const parsed = parsePlan(demo)
  if (!parsed.ok) throw new Error(parsed.problem.code)
  showPlan(parsed.value.plan, { kind: 'saved', atMs: 0 })
  lookAtPlan(parsed.value.plan)
  const [slab] = parsed.value.plan.slabs
  if (slab === undefined) throw new Error('the demo has no slab')
  return slab
}

const box = (name: string) => screen.getByRole<HTMLInputElement>('textbox', { name })
const tapCorners = () => screen.getByRole<HTMLButtonElement>('button', { name: 'Tap its four corners' })

beforeEach(() => {
  bringTexts(en)
  sessionStore.setState({ display: { system: 'mm' }, ownBoards: [] })
  const slab = demoSlab()
  render(<BoardPart slab={slab} scale={null} />)
})
afterEach(cleanup)

describe('a board of known size', () => {
  it('has no size of its own, and its corners wait until all of it is typed', async () => {
    expect(['Length', 'Width', 'Thickness'].map((name) => box(name).value)).toEqual(['', '', ''])
    await userEvent.type(box('Length'), '1200{Enter}')
    await userEvent.type(box('Width'), '600{Enter}')
    expect(tapCorners().disabled).toBe(true)
    await userEvent.type(box('Thickness'), '6{Enter}')
    expect(tapCorners().disabled).toBe(false)
  })

  it('is kept as one’s own when asked, offered first to the next slab, taken only when asked, and forgotten', async () => {
    for (const [name, text] of [
      ['Length', '1200'],
      ['Width', '600'],
      ['Thickness', '6'],
    ] as const) {
      await userEvent.type(box(name), `${text}{Enter}`)
    }
    await userEvent.click(screen.getByRole('button', { name: 'Keep as mine' }))
    expect(screen.queryByRole('button', { name: 'Keep as mine' })).toBeNull()
    cleanup()
    lookAtPlan(planStore.getState().plan)
    render(<BoardPart slab={demoSlab()} scale={null} />)
    expect(tapCorners().disabled).toBe(true)
    await userEvent.click(screen.getByRole('button', { name: 'Mine: 1200 mm × 600 mm × 6 mm' }))
    expect(box('Length').value).toBe('1200 mm')
    expect(tapCorners().disabled).toBe(false)
    expect(readPreferences().ownBoards).toEqual([{ lengthMm: 1200, widthMm: 600, thicknessMm: 6 }])
    await userEvent.click(screen.getByRole('button', { name: 'Forget 1200 mm × 600 mm × 6 mm' }))
    expect(readPreferences().ownBoards).toEqual([])
  })
})

describe('a rule of known length', () => {
  it('starts at no size, is kept as one’s own when asked, and offered again', async () => {
    cleanup()
    sessionStore.setState({ ownRules: [] })
    render(<RulePart slab={demoSlab()} />)
    const tapEnds = () => screen.getByRole<HTMLButtonElement>('button', { name: 'Tap its two ends' })
    expect(box('Length').value).toBe('')
    expect(tapEnds().disabled).toBe(true)
    await userEvent.type(box('Length'), '2000{Enter}')
    await userEvent.type(box('Thickness'), '3{Enter}')
    expect(tapEnds().disabled).toBe(false)
    await userEvent.click(screen.getByRole('button', { name: 'Keep as mine' }))
    expect(readPreferences().ownRules).toEqual([{ lengthMm: 2000, thicknessMm: 3 }])
    cleanup()
    render(<RulePart slab={demoSlab()} />)
    expect(tapEnds().disabled).toBe(true)
    await userEvent.click(screen.getByRole('button', { name: 'Mine: 2000 mm × 3 mm' }))
    expect(tapEnds().disabled).toBe(false)
  })
})
