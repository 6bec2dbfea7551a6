// @vitest-environment happy-dom
import { cleanup, fireEvent, render, screen } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { sessionStore } from '../../state/sessionStore'
import { LengthField, OptionalLengthField } from './LengthField'

const LIMITS = { leastMm: 100, greatestMm: 20_000 }

beforeEach(() => sessionStore.setState({ display: { system: 'mm' } }))
afterEach(cleanup)

function lengthField(valueMm = 2200) {
  const onChange = vi.fn()
  const view = render(<LengthField label="Length" valueMm={valueMm} limits={LIMITS} onChange={onChange} />)
  const box = screen.getByRole('textbox', { name: 'Length' })
  if (!(box instanceof HTMLInputElement)) throw new Error('the field is no input')
  return { box, onChange, ...view }
}

describe('LengthField', () => {
  it('shows its value in the units shown while it is not edited', () => {
    expect(lengthField().box.value).toBe('2200 mm')
    sessionStore.setState({ display: { system: 'inch', fraction: 16 } })
    cleanup()
    // By hand: 2200 mm / 25.4 = 86.614 in, 86 10/16 to the nearest sixteenth, 7 ft and 2 5/8 in.
    expect(lengthField().box.value).toBe('7′ 2 5/8″')
  })

  it('reads what makers type on Enter, once', async () => {
    const { box, onChange } = lengthField()
    await userEvent.clear(box)
    await userEvent.type(box, '7\' 2 1/2"{Enter}')
    // By hand: 86.5 in × 25.4 = 2197.1 mm.
    expect(onChange).toHaveBeenCalledTimes(1)
    expect(onChange.mock.calls[0]?.[0]).toBeCloseTo(2197.1, 9)
  })

  it('reads what was typed when the box is left', async () => {
    const { box, onChange } = lengthField()
    await userEvent.clear(box)
    await userEvent.type(box, '2.4 m')
    expect(onChange).not.toHaveBeenCalled()
    await userEvent.tab()
    expect(onChange).toHaveBeenCalledExactlyOnceWith(2400)
  })

  it('keeps wrong text, says why under it, and ties the sentence to the box', async () => {
    const { box, onChange } = lengthField()
    await userEvent.clear(box)
    await userEvent.type(box, 'long enough')
    await userEvent.tab()
    expect(box.value).toBe('long enough')
    expect(onChange).not.toHaveBeenCalled()
    expect(box.getAttribute('aria-invalid')).toBe('true')
    const sentence = screen.getByRole('alert')
    expect(sentence.textContent).toContain('“long enough”')
    expect(box.getAttribute('aria-describedby')?.split(' ')).toContain(sentence.id)
  })

  it('refuses a length beyond its limits and names the limit', async () => {
    const { box, onChange } = lengthField()
    await userEvent.clear(box)
    await userEvent.type(box, '-5{Enter}')
    expect(onChange).not.toHaveBeenCalled()
    await userEvent.clear(box)
    await userEvent.type(box, '99{Enter}')
    expect(screen.getByRole('alert').textContent).toContain('100 mm')
    expect(onChange).not.toHaveBeenCalled()
  })

  it('does not touch the value when nothing was typed, however coarsely it is shown', async () => {
    sessionStore.setState({ display: { system: 'inch', fraction: 8 } })
    const { box, onChange } = lengthField(2197.3)
    await userEvent.click(box)
    await userEvent.tab()
    expect(onChange).not.toHaveBeenCalled()
  })

  it('gives up typed text on Escape, and keeps the Escape to itself', async () => {
    const { box, onChange } = lengthField()
    const onOuter = vi.fn()
    document.body.addEventListener('keydown', onOuter)
    await userEvent.clear(box)
    await userEvent.type(box, '17')
    onOuter.mockClear()
    await userEvent.keyboard('{Escape}')
    expect(box.value).toBe('2200 mm')
    expect(onChange).not.toHaveBeenCalled()
    expect(onOuter).not.toHaveBeenCalled()
    document.body.removeEventListener('keydown', onOuter)
  })

  it.each([
    ['1 mm', {}, 2201],
    ['10 mm with Shift', { shiftKey: true }, 2210],
    ['0.1 mm with Alt', { altKey: true }, 2200.1],
  ])('steps by %s with the arrow keys', (_, keys, expected) => {
    const { box, onChange } = lengthField()
    fireEvent.keyDown(box, { key: 'ArrowUp', ...keys })
    expect(onChange.mock.calls[0]?.[0]).toBeCloseTo(expected, 9)
  })

  it('steps by a sixteenth of an inch in inches, and never beyond a limit', () => {
    sessionStore.setState({ display: { system: 'inch', fraction: 16 } })
    const { box, onChange } = lengthField(101)
    fireEvent.keyDown(box, { key: 'ArrowUp' })
    // By hand: 25.4 / 16 = 1.5875 mm.
    expect(onChange.mock.calls[0]?.[0]).toBeCloseTo(102.5875, 9)
    fireEvent.keyDown(box, { key: 'ArrowDown', shiftKey: true })
    expect(onChange.mock.calls[1]?.[0]).toBe(100)
  })

  it('shows the new value when it changes elsewhere, and forgets wrong text', async () => {
    const { box, rerender, onChange } = lengthField()
    await userEvent.clear(box)
    await userEvent.type(box, 'nonsense{Enter}')
    rerender(<LengthField label="Length" valueMm={1800} limits={LIMITS} onChange={onChange} />)
    expect(box.value).toBe('1800 mm')
    expect(screen.queryByRole('alert')).toBeNull()
  })
})

describe('OptionalLengthField', () => {
  it('takes an emptied box as no length', async () => {
    const onChange = vi.fn()
    render(<OptionalLengthField label="Taped" valueMm={500} limits={LIMITS} onChange={onChange} />)
    const box = screen.getByRole('textbox', { name: 'Taped' })
    await userEvent.clear(box)
    await userEvent.tab()
    expect(onChange).toHaveBeenCalledExactlyOnceWith(null)
  })
})
