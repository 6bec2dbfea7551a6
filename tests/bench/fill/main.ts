import {
  fillRoom,
  fillSearch,
  type FillFinding,
  type FillTask,
  type SearchState,
} from '../../../src/core/layout'
import { plantedPuzzle, slabFillTask } from '../../support/fillCases'
import { FILL_FIGURES, FROZEN_SLABS, leastClearanceMm, spoilt } from '../../support/fillFigures'
import { geosDistance } from '../../support/geosDistance'
import { plainFillMm2 } from '../../support/plainFill'
import bestKnown from '../../support/fillBestKnown.json'
import { cpuMs } from '../cover/stopwatch'

const words = process.argv.slice(2)
const numberAfter = (flag: string, otherwise: number): number => {
  const at = words.indexOf(flag)
  const value = at < 0 ? otherwise : Number(words[at + 1])
  if (!Number.isFinite(value)) throw new Error(`${flag} takes a number`)
  return value
}
const seed = numberAfter('--seed', 1)
const isSpoilt = words.includes('--spoil')
const recordSeconds = numberAfter('--record', 0)
/** Where nothing is recorded for a slab: so long for the search, and as long for the plain solver, s. */
const knownSeconds = numberAfter('--known', 20)
const PUZZLES = numberAfter('--puzzles', 6)
const MOST_PUZZLE_MS = 10_000

interface Timed {
  readonly state: SearchState<FillFinding>
  readonly firstMs: number
  readonly worthAfter: (ms: number) => number
}

/** Runs a search for so long on a core, and knows what it had found when. */
function timed(task: FillTask, forMs: number, isEnough: (finding: FillFinding) => boolean): Timed {
  const startMs = cpuMs()
  const search = fillSearch(task)
  if (!search.ok) throw new Error(search.problem.code)
  const found: { readonly atMs: number; readonly worth: number }[] = []
  let state = search.value.step(1)
  for (let now = 0; now < forMs; now = cpuMs() - startMs) {
    state = search.value.step(100)
    if (state.value > (found.at(-1)?.worth ?? 0)) found.push({ atMs: cpuMs() - startMs, worth: state.value })
    if (state.incumbent !== null && isEnough(state.incumbent)) break
  }
  return {
    state,
    firstMs: found[0]?.atMs ?? Infinity,
    worthAfter: (ms) => found.findLast(({ atMs }) => atMs <= ms)?.worth ?? 0,
  }
}

const missedOf: string[] = []
function tell(
  values: Readonly<Record<string, unknown>> & { readonly case: string },
  misses: Readonly<Record<string, boolean>>,
) {
  const missed = Object.entries(misses).flatMap(([name, isMissed]) => (isMissed ? [name] : []))
  missedOf.push(...missed.map((name) => `${values.case}: ${name}`))
  const rounded = (_: string, value: unknown): unknown =>
    typeof value === 'number' ? Number(value.toPrecision(6)) : value
  console.log(JSON.stringify({ ...values, missed }, rounded))
}

const distanceMm = await geosDistance()

function clearanceMm(task: FillTask, { proposals }: FillFinding): number {
  return Math.min(...proposals.map((one) => leastClearanceMm(task, isSpoilt ? spoilt(one) : one, distanceMm)))
}

function puzzle(one: number, pieces: 1 | 2): void {
  const { task, plantedMm2 } = plantedPuzzle(one, pieces)
  const shareOf = ({ proposals }: FillFinding): number => (proposals[0]?.filledMm2 ?? 0) / plantedMm2
  const { state, firstMs } = timed(task, MOST_PUZZLE_MS, (finding) => shareOf(finding) >= 0.999)
  const share = state.incumbent === null ? 0 : shareOf(state.incumbent) * (isSpoilt ? 0.9 : 1)
  const leastMm = state.incumbent === null ? NaN : clearanceMm(task, state.incumbent)
  tell(
    { case: `planted-${pieces}`, seed: one, share, evaluations: state.evaluations, firstMs, leastMm },
    { share: share < FILL_FIGURES.planted[pieces], joint: !(leastMm >= task.limits.leastJointMm - 1e-6) },
  )
}

interface Known {
  readonly worthMm2: number
  readonly by: string
}

/** The better of a long search and of the plain solver. */
function knownOf(one: number, task: FillTask, seconds: number): Known {
  const search = timed({ ...task, seed: task.seed + 1_000_003 }, seconds * 1000, () => false).state.value
  const startMs = cpuMs()
  const plain = plainFillMm2(task, one, () => cpuMs() - startMs < seconds * 1000)
  const by = `${seconds} s of search ${Math.round(search)}, ${seconds} s of plain restarts ${Math.round(plain)}`
  return { worthMm2: Math.max(search, plain), by }
}

const shares: number[] = []
function slab(one: number): void {
  const task = slabFillTask(one)
  const { state, firstMs, worthAfter } = timed(task, 10_000, () => false)
  const recorded: readonly (Known & { readonly seed: number })[] = bestKnown
  const known = recorded.find((row) => row.seed === one) ?? knownOf(one, task, knownSeconds)
  const best = Math.max(known.worthMm2, state.value)
  const [in1s, in10s] = [worthAfter(1000) / best, (worthAfter(10_000) / best) * (isSpoilt ? 0.9 : 1)]
  shares.push(in10s)
  const leastMm = state.incumbent === null ? NaN : clearanceMm(task, state.incumbent)
  const [first] = state.incumbent?.proposals ?? []
  tell(
    {
      case: 'slab',
      seed: one,
      firstMs,
      in1s,
      in10s,
      worthMm2: state.value,
      bestKnownMm2: known.worthMm2,
      by: known.by,
      boundMm2: state.bound,
      filledShareOfVoid: first?.filledShareOfVoid,
      filledShareOfReachable: first?.filledShareOfReachable,
      pieces: first?.pieces.length,
      cuts: first?.cutCount,
      evaluations: state.evaluations,
      leastMm,
    },
    {
      first: firstMs > FILL_FIGURES.firstMs,
      in1s: in1s < FILL_FIGURES.shareAfter1s,
      in10s: in10s < FILL_FIGURES.worstAfter10s,
      joint: !(leastMm >= task.limits.leastJointMm - 1e-6),
    },
  )
}

// The first search of a process is compiled as it runs; the figures are for the second.
timed(slabFillTask(9_999), 1500, () => false)
const slabs = FROZEN_SLABS.map((one) => (seed - 1) * 1000 + one)
if (recordSeconds > 0) {
  const rows = slabs.map((one) => {
    const task = slabFillTask(one)
    const room = fillRoom(task)
    const row = {
      seed: one,
      ...knownOf(one, task, recordSeconds),
      boundMm2: room.ok ? room.value.reachableMm2 - task.limits.costPerPieceMm2 : 0,
    }
    console.error(JSON.stringify(row))
    return row
  })
  console.log(JSON.stringify(rows, null, 2))
} else {
  for (let k = 0; k < PUZZLES; k += 1) {
    puzzle(seed * 1000 + k, 1)
    puzzle(seed * 1000 + k, 2)
  }
  for (const one of slabs) slab(one)
  const meanIn10s = shares.reduce((sum, share) => sum + share, 0) / shares.length
  tell({ case: 'mean', seed, meanIn10s }, { meanIn10s: meanIn10s < FILL_FIGURES.meanAfter10s })
  console.log(JSON.stringify({ case: 'summary', seed, missed: missedOf }))
  process.exitCode = missedOf.length > 0 ? 1 : 0
}
