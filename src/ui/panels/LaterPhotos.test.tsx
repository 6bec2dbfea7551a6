// @vitest-environment happy-dom
import { cleanup, render, screen } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { flatOption, flatPlan, flatSlab } from '../../../tests/support/flatPlan'
import { panelsAtHand } from '../../../tests/support/panelsAtHand'
import { addLaterPhoto } from '../../state/commands'
import { planStore, showPlan } from '../../state/planStore'
import { run, undo } from '../../state/run'
import { lookAtPlan, sessionStore } from '../../state/sessionStore'
import { goToStage } from '../stages/goToStage'
import { Sheet } from './Sheet'

const PHOTO = {
  id: 'later',
  hash: '1'.repeat(64),
  fileName: 'cleaned.jpg',
  mediaType: 'image/jpeg',
  widthPx: 3000,
  heightPx: 2000,
  focalLength35mm: null,
  face: 'top',
} as const

const photos = () => {
  const capture = planStore.getState().plan.slabs[0]?.capture
  return capture?.kind === 'photo' ? capture.photos : []
}

beforeAll(panelsAtHand, 180_000)
beforeEach(() => {
  sessionStore.setState({ display: { system: 'mm' }, draft: null })
  showPlan(flatPlan(flatSlab(), flatOption(1000, 400, { xMm: 300, yMm: 100 })), { kind: 'saved', atMs: 0 })
  lookAtPlan(planStore.getState().plan)
  goToStage('photo')
})
afterEach(cleanup)

describe('later photos of a slab', () => {
  it('are chosen, said to be of the underside, and removed, each one step to undo', async () => {
    run(addLaterPhoto, { slabId: 'slab', photo: PHOTO })
    render(<Sheet height="half" onHeight={() => undefined} />)
    await userEvent.click(await screen.findByRole('radio', { name: 'No. 2' }))
    expect(sessionStore.getState().photoId).toBe('later')
    expect(screen.getByText('cleaned.jpg')).toBeDefined()
    expect(screen.queryByRole('button', { name: 'Use another photo of this slab' })).toBeNull()
    await userEvent.click(screen.getByRole('radio', { name: 'The underside' }))
    expect(photos()[1]?.face).toBe('underside')
    await userEvent.click(screen.getByRole('button', { name: 'Remove this photo' }))
    expect(photos()).toHaveLength(1)
    expect(screen.queryByRole('radio', { name: 'First' })).toBeNull()
    undo()
    expect(photos()[1]?.face).toBe('underside')
  })

  it('are offered where there is one photo yet, without a choice', async () => {
    render(<Sheet height="half" onHeight={() => undefined} />)
    expect(await screen.findByRole('button', { name: 'Add a later photo' })).toBeDefined()
    expect(screen.queryByRole('radio', { name: 'First' })).toBeNull()
  })

  it('have each mark of the slab set anew by name', async () => {
    run(addLaterPhoto, { slabId: 'slab', photo: PHOTO })
    sessionStore.setState({ photoId: 'later' })
    goToStage('scale')
    render(<Sheet height="half" onHeight={() => undefined} />)
    await userEvent.click(await screen.findByRole('button', { name: 'Set it here C' }))
    expect(sessionStore.getState()).toMatchObject({ tool: 'mark', selection: { kind: 'mark', markId: 'c' } })
  })
})
