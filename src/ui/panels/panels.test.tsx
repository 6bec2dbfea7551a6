// @vitest-environment happy-dom
import { cleanup, fireEvent, render, screen, within } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import demo from '../../../demo-data/library-table/plan.json'
import { panelsAtHand } from '../../../tests/support/panelsAtHand'
import { parsePlan, type Plan } from '../../core/plan'
import { setTapedDistance } from '../../state/commands'
import { planStore, showPlan } from '../../state/planStore'
import { redo, run, undo } from '../../state/run'
import { lookAtPlan, sessionStore } from '../../state/sessionStore'
import { goToStage } from '../stages/goToStage'
import { STAGE_NAMES } from '../stages/stageNames'
import { Sheet } from './Sheet'

function demoPlan(): Plan {
  const parsed = parsePlan(demo)
  if (!parsed.ok) throw new Error(parsed.problem.code)
  return parsed.value.plan
}

const plan = () => planStore.getState().plan

beforeAll(panelsAtHand, 180_000)
beforeEach(() => {
  sessionStore.setState({ display: { system: 'mm' }, draft: null })
  showPlan(demoPlan(), { kind: 'saved', atMs: 0 })
  lookAtPlan(plan())
  goToStage('photo')
})
afterEach(cleanup)

const renderSheet = () => {
  const onHeight = vi.fn()
  render(<Sheet height="half" onHeight={onHeight} />)
  return onHeight
}

const open = (stage: (typeof STAGE_NAMES)[number]) => {
  goToStage(stage)
  renderSheet()
}

describe('the panel of inputs and results', () => {
  it('keeps the figures that decide in view at every stage', () => {
    renderSheet()
    const strip = screen.getByRole('region', { name: 'What decides' })
    const figures = strip.textContent
    expect(figures).toMatch(/\d L/)
    expect(figures).toMatch(/\d %/)
    expect(figures).toMatch(/\d m²/)
    for (const stage of STAGE_NAMES.filter((name) => name !== 'paper')) {
      cleanup()
      open(stage)
      expect(screen.getByRole('region', { name: 'What decides' }).textContent).toBe(figures)
    }
  })

  it('names a taped distance that does not fit, in its row, and lets go of it when it is right again', async () => {
    const [slab] = plan().slabs
    const [distance] = slab?.tapedDistances ?? []
    if (slab === undefined || distance === undefined) throw new Error('the demo has no distances')
    goToStage('scale')
    renderSheet()
    await screen.findByRole('radio', { name: /Taped distances/ })
    expect(document.querySelectorAll('tr[data-wrong]')).toHaveLength(0)
    cleanup()
    run(setTapedDistance, {
      slabId: slab.id,
      distanceId: distance.id,
      markIds: distance.markIds,
      lengthMm: distance.lengthMm + 60,
    })
    renderSheet()
    expect(document.querySelectorAll('tr[data-wrong]').length).toBeGreaterThan(0)
    const sentence = document.querySelector('.row-problem')?.textContent ?? ''
    const box = document.querySelector(`[aria-describedby~="${document.querySelector('.row-problem')?.id}"]`)
    expect(sentence).toMatch(/[A-D]–[A-D]/)
    expect(box).not.toBeNull()
    cleanup()
    undo()
    renderSheet()
    expect(document.querySelectorAll('tr[data-wrong]')).toHaveLength(0)
  })

  it('changes the table by its fields as one step each, and the figures follow', async () => {
    open('table')
    const before = screen.getByRole('region', { name: 'What decides' }).textContent
    const width = screen.getByRole('textbox', { name: 'Width' })
    await userEvent.clear(width)
    await userEvent.type(width, '60 cm{Enter}')
    expect(plan().options[0]?.table.outline).toMatchObject({ widthMm: 600 })
    expect(screen.getByRole('region', { name: 'What decides' }).textContent).not.toBe(before)
    expect(planStore.getState().past).toHaveLength(1)
    undo()
    expect(plan().options[0]?.table.outline).toMatchObject({ widthMm: 900 })
    redo()
    expect(plan().options[0]?.table.outline).toMatchObject({ widthMm: 600 })
  })

  it('keeps the middle of the table where it is when its angle is typed', async () => {
    open('table')
    const pose = plan().options[0]?.footprint?.pose
    const angle = screen.getByRole('textbox', { name: 'Angle' })
    await userEvent.clear(angle)
    await userEvent.type(angle, '90{Enter}')
    const turned = plan().options[0]?.footprint?.pose
    if (pose === undefined || pose === null || turned === undefined || turned === null)
      throw new Error('no pose')
    const middle = (p: typeof pose) => [
      p.xMm + 1000 * Math.cos(p.angleRad) - 450 * Math.sin(p.angleRad),
      p.yMm + 1000 * Math.sin(p.angleRad) + 450 * Math.cos(p.angleRad),
    ]
    // By hand: the middle of 2000 × 900 lies 1000 along and 450 across, turned by the angle.
    expect(turned.angleRad).toBeCloseTo(Math.PI / 2, 9)
    expect(middle(turned)[0]).toBeCloseTo(middle(pose)[0] ?? 0, 3)
    expect(middle(turned)[1]).toBeCloseTo(middle(pose)[1] ?? 0, 3)
  })

  it('sets out every cut by two points and a check', () => {
    open('cuts')
    const cuts = screen.getAllByText(/^Check:/)
    expect(cuts.length).toBeGreaterThan(0)
    expect(screen.getAllByRole('row', { name: /^from/ })).toHaveLength(cuts.length)
    expect(screen.getAllByRole('row', { name: /^to/ })).toHaveLength(cuts.length)
  })

  it('selects in the list what the canvas selects, and the other way round', async () => {
    renderSheet()
    const list = document.querySelector('.objects')
    if (!(list instanceof HTMLElement)) throw new Error('no list')
    const mark = within(list).getByText('Mark A').closest('button')
    await userEvent.click(mark ?? list)
    const selection = sessionStore.getState().selection
    expect(selection?.kind).toBe('mark')
    expect(mark?.getAttribute('aria-pressed')).toBe('true')
    expect(mark?.textContent).toMatch(/mm/)
  })

  it('sends the maker to where an issue is put right', async () => {
    const [slab] = plan().slabs
    const [distance] = slab?.tapedDistances ?? []
    if (slab === undefined || distance === undefined) throw new Error('the demo has no distances')
    const markIds = distance.markIds
    run(setTapedDistance, {
      slabId: slab.id,
      distanceId: distance.id,
      markIds,
      lengthMm: distance.lengthMm + 60,
    })
    open('paper')
    const issue = screen.getAllByRole('button', { name: 'Go there' })[0]
    if (issue === undefined) throw new Error('no issue')
    await userEvent.click(issue)
    expect(sessionStore.getState().stage).toBe('scale')
    expect(sessionStore.getState().selection?.kind).toBe('distance')
  })
})

describe('the grip of the sheet', () => {
  it('steps up by a press of a key or a tap', async () => {
    const onHeight = renderSheet()
    const grip = screen.getByRole('button', { name: 'Pull the panel up' })
    grip.focus()
    await userEvent.keyboard('{Enter}')
    expect(onHeight).toHaveBeenLastCalledWith('high')
  })

  it('follows a pull down', () => {
    const onHeight = renderSheet()
    const grip = screen.getByRole('button', { name: 'Pull the panel up' })
    fireEvent.pointerDown(grip, { clientY: 500, pointerId: 1 })
    fireEvent.pointerUp(grip, { clientY: 620, pointerId: 1 })
    expect(onHeight).toHaveBeenCalledExactlyOnceWith('low')
  })
})
