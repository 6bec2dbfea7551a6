// @vitest-environment happy-dom
import { cleanup, fireEvent, render, screen } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { afterEach, describe, expect, it, vi } from 'vitest'
import { AngleField } from './AngleField'
import { CheckField } from './CheckField'
import { ChoiceGroup } from './ChoiceGroup'
import { MoneyField } from './MoneyField'
import { NumberField } from './NumberField'
import { PercentField } from './PercentField'
import { TextField } from './TextField'

afterEach(cleanup)

async function typeInto(label: string, text: string) {
  const box = screen.getByRole('textbox', { name: label })
  await userEvent.clear(box)
  await userEvent.type(box, `${text}{Enter}`)
}

describe('fields', () => {
  it('reads per cent as a fraction', async () => {
    const onChange = vi.fn()
    render(<PercentField label="Loss" fraction={0.1} onChange={onChange} />)
    expect(screen.getByDisplayValue('10 %')).toBeTruthy()
    await typeInto('Loss', '12.5 %')
    expect(onChange).toHaveBeenCalledExactlyOnceWith(0.125)
  })

  it('reads an angle in degrees as radians', async () => {
    const onChange = vi.fn()
    render(<AngleField label="Angle" angleRad={0} onChange={onChange} />)
    await typeInto('Angle', '-90')
    expect(onChange.mock.calls[0]?.[0]).toBeCloseTo(-Math.PI / 2, 12)
  })

  it('reads money to the cent, and an empty box as none', async () => {
    const onChange = vi.fn()
    render(<MoneyField label="Price" cents={4850} onChange={onChange} />)
    expect(screen.getByDisplayValue('48.50')).toBeTruthy()
    await typeInto('Price', '19.99')
    expect(onChange).toHaveBeenLastCalledWith(1999)
    await userEvent.clear(screen.getByRole('textbox', { name: 'Price' }))
    await userEvent.tab()
    expect(onChange).toHaveBeenLastCalledWith(null)
  })

  it('keeps a number within its limits when it is stepped', () => {
    const onChange = vi.fn()
    render(
      <NumberField
        label="Density"
        value={2995}
        limits={{ least: 500, greatest: 3000 }}
        onChange={onChange}
      />,
    )
    fireEvent.keyDown(screen.getByRole('textbox', { name: 'Density' }), { key: 'ArrowUp', shiftKey: true })
    expect(onChange).toHaveBeenCalledExactlyOnceWith(3000)
  })

  it('refuses an empty name where one is needed', async () => {
    const onChange = vi.fn()
    render(<TextField label="Name" value="A" needed onChange={onChange} />)
    await userEvent.clear(screen.getByRole('textbox', { name: 'Name' }))
    await userEvent.tab()
    expect(onChange).not.toHaveBeenCalled()
    expect(screen.getByRole('alert').textContent).toContain('name')
  })

  it('offers a choice as radio buttons under one name', async () => {
    const onChange = vi.fn()
    render(
      <ChoiceGroup<'a' | 'b'>
        label="Paper"
        value="a"
        onChange={onChange}
        options={[
          { value: 'a', label: 'A4' },
          { value: 'b', label: 'US Letter' },
        ]}
      />,
    )
    expect(screen.getByRole('group', { name: 'Paper' })).toBeTruthy()
    await userEvent.click(screen.getByRole('radio', { name: 'US Letter' }))
    expect(onChange).toHaveBeenCalledExactlyOnceWith('b')
  })

  it('ticks a box by its words', async () => {
    const onChange = vi.fn()
    render(<CheckField label="Turned over" checked={false} onChange={onChange} />)
    await userEvent.click(screen.getByText('Turned over'))
    expect(onChange).toHaveBeenCalledExactlyOnceWith(true)
  })
})
