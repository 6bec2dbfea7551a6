import type { HeatEnds } from '../../src/core/resin/conductionSolver'
import type { CureLaw } from '../../src/core/resin/cureLaw'
import { inertCells, type HeatCell } from '../../src/core/resin/heatCell'
import { HeatRun, type StepLimits } from '../../src/core/resin/heatRun'

/**
 * Textbook problems put to the solver of the pour model. Each takes the row's inputs and returns one figure.
 * A wall of half thickness L is half a wall whose lower face lets no heat through.
 */
export type Inputs = Readonly<Record<string, number | string>>

export const number = (inputs: Inputs, name: string): number => {
  const value = inputs[name]
  if (typeof value !== 'number') throw new Error(`the row has no number ${name}`)
  return value
}

const NEVER: CureLaw = () => 0
/** Stands for a surface held at a temperature. */
const HELD_W_PER_M2K = 1e12
const LENGTH_M = 0.05
const CONDUCTIVITY = 0.2
const VOLUMETRIC = 2e6
const DIFFUSIVITY = CONDUCTIVITY / VOLUMETRIC
const TIME_SCALE_S = LENGTH_M ** 2 / DIFFUSIVITY

const ends = (topWPerM2K: number, airK: number, bottomWPerM2K = 0): HeatEnds => ({
  topWPerM2K,
  bottomWPerM2K,
  airK: () => airK,
})

const wall = (cells: number, temperatureK: number): readonly HeatCell[] =>
  inertCells({
    thicknessM: LENGTH_M,
    conductivityWPerMK: CONDUCTIVITY,
    volumetricHeatJPerM3K: VOLUMETRIC,
    temperatureK,
    cells,
  })

const reacting = (cells: readonly HeatCell[], fullRiseK: number): readonly HeatCell[] =>
  cells.map((cell) => ({ ...cell, fullRiseK, layer: 0 }))

function advanceTo(
  run: HeatRun,
  untilS: number,
  limits: StepLimits,
  done: () => boolean = () => false,
): void {
  while (run.timeS < untilS && !done()) run.advance(untilS, limits)
}

const at = (values: Float64Array, index: number): number => values[index] ?? NaN

/** Temperature at the lower face, where the slope is nought: parabola through the two lowest cells. */
const atFloor = (run: HeatRun): number => (9 * at(run.temperatureK, 0) - at(run.temperatureK, 1)) / 8

const biotEnds = (biot: number): HeatEnds =>
  ends(biot === Infinity ? HELD_W_PER_M2K : (biot * CONDUCTIVITY) / LENGTH_M, 0)

const biotOf = (inputs: Inputs): number => (inputs['biot'] === 'held' ? Infinity : number(inputs, 'biot'))

/** Steps small against the finest cell. */
const fine = (cells: number): StepLimits => ({
  greatestDegreeStep: 1,
  greatestStepS: TIME_SCALE_S / Math.max(400, cells * 20),
})

/** θ at the centre or the surface of a plane wall that was at 1 and stands in air at 0. */
export function planeWall(inputs: Inputs): number {
  const cells = number(inputs, 'cells')
  const run = new HeatRun(wall(cells, 1), biotEnds(biotOf(inputs)), NEVER, 0)
  advanceTo(run, number(inputs, 'fourier') * TIME_SCALE_S, fine(cells))
  if (inputs['place'] === 'surface') return run.surfaceK
  if (inputs['place'] === 'centre') return atFloor(run)
  return run.balance.lostJPerM2 / (LENGTH_M * VOLUMETRIC)
}

/** The first root ζ of ζ·tan ζ = Bi, from the rate at which the wall's late temperatures fall. */
export function planeWallRoot(inputs: Inputs): number {
  const cells = number(inputs, 'cells')
  const biot = biotOf(inputs)
  const run = new HeatRun(wall(cells, 1), biotEnds(biot), NEVER, 0)
  const scale = Math.max(1, 1 / biot)
  const limits = { greatestDegreeStep: 1, greatestStepS: (TIME_SCALE_S * scale) / 2000 }
  advanceTo(run, TIME_SCALE_S * scale, limits)
  const before = atFloor(run)
  advanceTo(run, 1.5 * TIME_SCALE_S * scale, limits)
  return Math.sqrt(Math.log(before / atFloor(run)) / (0.5 * scale))
}

/** The factor C of the first term, from the centre late in time and the root of the row. */
export function planeWallFactor(inputs: Inputs): number {
  const cells = number(inputs, 'cells')
  const biot = biotOf(inputs)
  const scale = Math.max(1, 1 / biot)
  const run = new HeatRun(wall(cells, 1), biotEnds(biot), NEVER, 0)
  advanceTo(run, TIME_SCALE_S * scale, {
    greatestDegreeStep: 1,
    greatestStepS: (TIME_SCALE_S * scale) / 4000,
  })
  return atFloor(run) * Math.exp(planeWallRoot(inputs) ** 2 * scale)
}

/** θ in a body so thick that its far side does not matter: surface with convection, or inside under a held surface. */
export function halfSpace(inputs: Inputs): number {
  const cells = number(inputs, 'cells')
  const depthM = 6 * LENGTH_M
  const cellM = depthM / cells
  const thick = wall(cells, 0).map((cell) => ({ ...cell, thicknessM: cellM }))
  const timeS = 0.25 * TIME_SCALE_S
  const spread = Math.sqrt(DIFFUSIVITY * timeS)
  const held = inputs['beta'] === 'held'
  const top = held ? HELD_W_PER_M2K : (number(inputs, 'beta') * CONDUCTIVITY) / spread
  const run = new HeatRun(thick, ends(top, 1), NEVER, 0)
  advanceTo(run, timeS, { greatestDegreeStep: 1, greatestStepS: timeS / 2000 })
  if (!held) return run.surfaceK
  const depth = number(inputs, 'depthPerSpread') * spread
  const place = (depthM - depth) / cellM - 0.5
  const below = Math.floor(place)
  const share = place - below
  return at(run.temperatureK, below) * (1 - share) + at(run.temperatureK, below + 1) * share
}

/** Amplitude of a sine between two held faces, after a time in which it falls to exp(−π²·Fo). */
export function sineMode(inputs: Inputs): number {
  const cells = number(inputs, 'cells')
  const shape = wall(cells, 0).map((cell, index) => ({
    ...cell,
    temperatureK: Math.sin((Math.PI * (index + 0.5)) / cells),
  }))
  const run = new HeatRun(shape, ends(HELD_W_PER_M2K, 0, HELD_W_PER_M2K), NEVER, 0)
  advanceTo(run, number(inputs, 'fourier') * TIME_SCALE_S, fine(cells))
  const middle = Math.floor(cells / 2)
  return (
    at(run.temperatureK, middle) /
    at(
      Float64Array.from(shape, (cell) => cell.temperatureK),
      middle,
    )
  )
}

/** Steady rise of an evenly heated slab above the air, K. */
export function heatedSlab(inputs: Inputs): number {
  const lengthM = number(inputs, 'halfThicknessM')
  const cells = inertCells({
    thicknessM: lengthM,
    conductivityWPerMK: number(inputs, 'conductivityWPerMK'),
    volumetricHeatJPerM3K: VOLUMETRIC,
    temperatureK: 300,
    cells: 40,
  })
  // A rise without end, of which so little is used that the rate stays even.
  const fullRiseK = 1e12
  const ratePerS = number(inputs, 'heatWPerM3') / VOLUMETRIC / fullRiseK
  const run = new HeatRun(
    reacting(cells, fullRiseK),
    ends(number(inputs, 'transferWPerM2K'), 300),
    () => ratePerS,
    0,
  )
  advanceTo(run, 80_000, { greatestDegreeStep: 1, greatestStepS: 40 })
  return (inputs['place'] === 'surface' ? run.surfaceK : atFloor(run)) - 300
}

/** Temperature where two thick bodies touch, shortly after, °C. */
export function contact(inputs: Inputs): number {
  const body = (name: string): readonly HeatCell[] =>
    inertCells({
      thicknessM: 0.1,
      conductivityWPerMK: number(inputs, `${name}WPerMK`),
      volumetricHeatJPerM3K: number(inputs, `${name}JPerM3K`),
      temperatureK: number(inputs, `${name}C`),
      cells: 400,
    })
  const cells = [...body('lower'), ...body('upper')]
  const run = new HeatRun(cells, ends(0, 0), NEVER, 0)
  advanceTo(run, 600, { greatestDegreeStep: 1, greatestStepS: 1 })
  // The heat through the face is the same on both sides.
  const [lower, upper] = [number(inputs, 'lowerWPerMK'), number(inputs, 'upperWPerMK')]
  return (lower * at(run.temperatureK, 399) + upper * at(run.temperatureK, 400)) / (lower + upper)
}

/** θ of a body without inner resistance after a time. */
export function lumpedCooling(inputs: Inputs): number {
  const cells = inertCells({
    thicknessM: number(inputs, 'thicknessM'),
    conductivityWPerMK: 1e6,
    volumetricHeatJPerM3K: number(inputs, 'volumetricJPerM3K'),
    temperatureK: 1,
    cells: 4,
  })
  const run = new HeatRun(cells, ends(number(inputs, 'transferWPerM2K'), 0), NEVER, 0)
  advanceTo(run, number(inputs, 'timeS'), { greatestDegreeStep: 1, greatestStepS: 10 })
  return atFloor(run)
}

/** A rise θ without end and without consumption: the law of Frank-Kamenetskii in the solver's own terms. */
const ENDLESS_K = 1e9
const expLaw =
  (ratePerS: number): CureLaw =>
  (_degree, theta) =>
    (ratePerS / ENDLESS_K) * Math.exp(theta)

function heatedWall(delta: number, biot: number, cells: number): HeatRun {
  const ratePerS = delta / TIME_SCALE_S
  return new HeatRun(reacting(wall(cells, 0), ENDLESS_K), biotEnds(biot), expLaw(ratePerS), 0)
}

const HEATED_STEPS: StepLimits = { greatestDegreeStep: 0.02 / ENDLESS_K, greatestStepS: TIME_SCALE_S / 20 }
const LONGEST_FOURIER = 400

function runsAway(delta: number, biot: number): boolean {
  const run = heatedWall(delta, biot, 24)
  let before = -1
  // Steady when the centre no longer moves; away when it has passed three times the critical rise.
  const isDone = (): boolean => {
    const now = at(run.temperatureK, 0)
    const steady = now - before < 1e-7
    before = now
    return steady || now > 5
  }
  advanceTo(run, LONGEST_FOURIER * TIME_SCALE_S, HEATED_STEPS, isDone)
  return at(run.temperatureK, 0) > 5
}

/** Frank-Kamenetskii's critical parameter of a slab, by halving on whether the solver runs away. */
export function criticalDelta(inputs: Inputs): number {
  const biot = biotOf(inputs)
  let [low, high] = [0.05, 2]
  while (high - low > 4e-4 * high) {
    const middle = (low + high) / 2
    if (runsAway(middle, biot)) high = middle
    else low = middle
  }
  return (low + high) / 2
}

/** Steady rise θ at the centre of a slab below its critical parameter. */
export function steadyTheta(inputs: Inputs): number {
  const run = heatedWall(number(inputs, 'delta'), Infinity, 40)
  advanceTo(run, 60 * TIME_SCALE_S, HEATED_STEPS)
  return atFloor(run)
}

/** Time to the thermal runaway of a body without losses, over RT²·cp/(E·q). */
export function adiabaticRunaway(inputs: Inputs): number {
  const epsilon = number(inputs, 'epsilon')
  const law: CureLaw = (_degree, theta) => Math.exp(theta / (1 + epsilon * theta)) / ENDLESS_K
  const run = new HeatRun(reacting(wall(1, 0), ENDLESS_K), ends(0, 0), law, 0)
  const isDone = (): boolean => at(run.temperatureK, 0) > 16
  advanceTo(run, 10, { greatestDegreeStep: 0.01 / ENDLESS_K, greatestStepS: 0.01 }, isDone)
  return run.timeS
}

/** Temperature at the end of a reaction without losses, °C. */
export function adiabaticEnd(inputs: Inputs): number {
  const riseK = number(inputs, 'heatJPerKg') / number(inputs, 'capacityJPerKgK')
  const law: CureLaw = (degree) => 1e-4 * (0.75 + degree) * (1 - degree)
  const start = number(inputs, 'startC')
  const run = new HeatRun(reacting(wall(4, start), riseK), ends(0, 0), law, 0)
  advanceTo(run, 1e6, { greatestDegreeStep: 0.02, greatestStepS: 1e3 })
  return at(run.temperatureK, 2)
}
