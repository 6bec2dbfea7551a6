// @vitest-environment happy-dom
import { cleanup, render, screen } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { afterEach, describe, expect, it, vi } from 'vitest'
import { PartBoundary } from './PartBoundary'

afterEach(() => {
  cleanup()
  vi.restoreAllMocks()
})

let isBroken = true

function Fragile() {
  if (isBroken) throw new Error('ring without area')
  return <p>whole again</p>
}

describe('PartBoundary', () => {
  it('says which part failed, keeps the rest, and tries again when asked', async () => {
    // React reports the caught error on the console as well.
    vi.spyOn(console, 'error').mockImplementation(() => undefined)
    isBroken = true
    render(
      <>
        <p>the other part</p>
        <PartBoundary part="picture">
          <Fragile />
        </PartBoundary>
      </>,
    )
    expect(screen.getByRole('alert').textContent).toMatch(/picture.*kept/)
    expect(screen.getByText('the other part')).toBeTruthy()
    isBroken = false
    await userEvent.click(screen.getByRole('button', { name: 'Try again' }))
    expect(screen.getByText('whole again')).toBeTruthy()
  })
})
