// @vitest-environment happy-dom
import { cleanup, render, screen } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { blankPlan } from '../../core/plan'
import { setPlanNote } from '../../state/commands'
import { planStore, showPlan } from '../../state/planStore'
import { run } from '../../state/run'
import { sessionStore } from '../../state/sessionStore'
import { Header } from './Header'

beforeEach(() => {
  showPlan(blankPlan('plan', 'o1'), { kind: 'saved', atMs: new Date(2026, 4, 1, 14, 2).getTime() })
  sessionStore.setState({ display: { system: 'mm' }, bright: false })
  render(<Header />)
})
afterEach(cleanup)

describe('Header', () => {
  it('renames the job as one step', async () => {
    const box = screen.getByRole('textbox', { name: 'Name of this job' })
    await userEvent.clear(box)
    await userEvent.type(box, 'Bench for the school{Enter}')
    expect(planStore.getState().plan.name).toBe('Bench for the school')
    expect(planStore.getState().past).toHaveLength(1)
  })

  it('says what undo would take back, and takes it back', async () => {
    run(setPlanNote, { note: 'oil, not lacquer' })
    await userEvent.click(await screen.findByRole('button', { name: 'Undo: change the note' }))
    expect(planStore.getState().plan.note).toBe('')
    expect(screen.getByRole('button', { name: 'Redo: change the note' })).toBeTruthy()
  })

  it('says when the job was saved, and says aloud when it was not', async () => {
    expect(screen.getByText(/^Saved .*2/)).toBeTruthy()
    planStore.setState({ save: { kind: 'failed', problem: { code: 'storage-full', values: {} } } })
    expect((await screen.findByRole('alert')).textContent).toMatch(/Not saved/)
  })

  it('asks whose work goes on when another window saved the same job', async () => {
    expect(screen.queryByRole('button', { name: 'Keep this one as a copy' })).toBeNull()
    planStore.setState({ save: { kind: 'conflict', theirSavedAtMs: 0 } })
    expect(await screen.findByRole('button', { name: 'Keep this one as a copy' })).toBeTruthy()
    expect(screen.getByRole('button', { name: 'Show what the other window saved' })).toBeTruthy()
  })

  it('opens the menu, switches units in it, and gives the focus back on Escape', async () => {
    const button = screen.getByRole('button', { name: 'Menu' })
    await userEvent.click(button)
    await userEvent.click(screen.getByRole('radio', { name: 'Inches' }))
    expect(sessionStore.getState().display).toEqual({ system: 'inch', fraction: 16 })
    await userEvent.click(screen.getByRole('radio', { name: '1/32' }))
    expect(sessionStore.getState().display).toEqual({ system: 'inch', fraction: 32 })
    await userEvent.keyboard('{Escape}')
    expect(screen.queryByRole('radio', { name: 'Inches' })).toBeNull()
    expect(document.activeElement).toBe(button)
  })
})
