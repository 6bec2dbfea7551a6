import { describe, expect, it } from 'vitest'
import { ConductionSolver, type HeatEnds } from './conductionSolver'
import { inertCells } from './heatCell'

const ENDS: HeatEnds = { bottomWPerM2K: 0, topWPerM2K: 20, airK: () => 0 }

const wall = (cells: number) =>
  inertCells({
    thicknessM: 0.05,
    conductivityWPerMK: 0.2,
    volumetricHeatJPerM3K: 2e6,
    temperatureK: 1,
    cells,
  })

const FOURIER = 0.5

/** Biot 5: θ at the centre and Fourier number 0.5, from the first four terms of the exact series. */
const BIOT_5_ROOTS = [1.313838, 4.033568, 6.909596, 9.892752]
const EXACT = BIOT_5_ROOTS.reduce(
  (sum, zeta) =>
    sum + ((4 * Math.sin(zeta)) / (2 * zeta + Math.sin(2 * zeta))) * Math.exp(-zeta * zeta * FOURIER),
  0,
)

function centreOf(cells: number, steps: number): number {
  const solver = new ConductionSolver(wall(cells), ENDS)
  const kelvin = new Float64Array(cells).fill(1)
  const stepS = (FOURIER * 0.05 ** 2 * 2e6) / 0.2 / steps
  for (let step = 0; step < steps; step += 1) solver.step(kelvin, step * stepS, stepS)
  return (9 * (kelvin[0] ?? NaN) - (kelvin[1] ?? NaN)) / 8
}

describe('ConductionSolver', () => {
  it('RES-5 halving the cells quarters the error of a wall in air, three times over', () => {
    const errors = [5, 10, 20, 40].map((cells) => Math.abs(centreOf(cells, 4000) - EXACT))
    for (let index = 1; index < errors.length; index += 1) {
      const ratio = (errors[index - 1] ?? NaN) / (errors[index] ?? NaN)
      expect(ratio).toBeGreaterThan(3)
      expect(ratio).toBeLessThan(5.5)
    }
  })

  it('RES-5 halving the step quarters the error in time', () => {
    const fine = centreOf(20, 4000)
    const errors = [10, 20, 40].map((steps) => Math.abs(centreOf(20, steps) - fine))
    expect((errors[0] ?? NaN) / (errors[1] ?? NaN)).toBeGreaterThan(2.8)
    expect((errors[1] ?? NaN) / (errors[2] ?? NaN)).toBeGreaterThan(2.8)
  })

  it('RES-5 a very long step brings everything to the temperature of the air, without ringing', () => {
    const solver = new ConductionSolver(wall(30), ENDS)
    const kelvin = new Float64Array(30).fill(0)
    kelvin.fill(100, 15)
    solver.step(kelvin, 0, 1e9)
    expect(Math.max(...kelvin)).toBeLessThan(0.01)
    expect(Math.min(...kelvin)).toBeGreaterThan(-0.01)
  })

  it('RES-5 a hot layer on a cold one stays between both, step by step', () => {
    const solver = new ConductionSolver(wall(30), { ...ENDS, topWPerM2K: 0 })
    const kelvin = new Float64Array(30).fill(20)
    kelvin.fill(60, 15)
    for (let step = 0; step < 40; step += 1) {
      solver.step(kelvin, 0, 600)
      // Two per cent of the jump: the first step is long against the finest cell.
      expect(Math.max(...kelvin)).toBeLessThan(60.8)
      expect(Math.min(...kelvin)).toBeGreaterThan(19.2)
    }
  })

  it('RES-5 heat stored and heat lost balance to rounding in every step', () => {
    const solver = new ConductionSolver(wall(24), ENDS)
    const kelvin = Float64Array.from({ length: 24 }, (_, index) => 280 + index)
    const stored = (): number =>
      kelvin.reduce((sum, value, index) => sum + value * (solver.capacity[index] ?? NaN), 0)
    const before = stored()
    const lost = solver.step(kelvin, 0, 900)
    expect(Math.abs(before - stored() - lost) / lost).toBeLessThan(1e-12)
  })

  it('RES-5 the surface lies between the last cell and the air; without transfer it is the last cell', () => {
    const kelvin = new Float64Array(10).fill(50)
    expect(new ConductionSolver(wall(10), ENDS).surfaceK(kelvin, 0)).toBeCloseTo(40, 9)
    expect(new ConductionSolver(wall(10), { ...ENDS, topWPerM2K: 0 }).surfaceK(kelvin, 0)).toBe(50)
  })
})
