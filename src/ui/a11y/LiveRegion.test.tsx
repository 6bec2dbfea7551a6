import { act, cleanup, render, screen } from '@testing-library/react'
import { afterEach, describe, expect, it } from 'vitest'
import { announce } from './announce'
import { LiveRegion } from './LiveRegion'

afterEach(cleanup)

describe('LiveRegion', () => {
  it('is a polite status that holds the last sentence only', () => {
    render(<LiveRegion />)
    act(() => announce('Mark A set.'))
    act(() => announce('Mark B set.'))
    const region = screen.getByRole('status')
    expect(region.getAttribute('aria-live')).toBe('polite')
    expect(region.textContent).toBe('Mark B set.')
  })

  it('changes also when the same sentence is said again', () => {
    render(<LiveRegion />)
    act(() => announce('Removed.'))
    const before = screen.getByRole('status').innerHTML
    act(() => announce('Removed.'))
    expect(screen.getByRole('status').textContent).toBe('Removed.')
    expect(screen.getByRole('status').innerHTML).not.toBe(before)
  })
})
