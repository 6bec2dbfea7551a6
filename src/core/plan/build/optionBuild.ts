import type { PourTimes } from '../../quote'
import { after, type Part, ready } from '../part'
import type { OptionResult, SlabResult } from '../planResult'
import type { PourResult } from '../pour/answerPour'
import type { Option, Plan, Slab } from '../schema'
import type { Issue } from '../issue'
import { rememberRecent } from '../rememberRecent'
import type { BuildResult } from './buildResult'
import type { BuildTask, SlabExtent } from './buildTask'

interface Figures {
  readonly result: OptionResult
  readonly issues: readonly Issue[]
}

export interface BuildTaskInput {
  readonly option: Option
  readonly slab: Slab
  readonly slabResult: SlabResult
  readonly shop: Plan['shop']
  readonly figures: Figures
}

const OPTIONS_KEPT = 32

/** Times of a pour that the order of work hangs on; the same object for the same pour. */
const timesOf = rememberRecent(({ pour }: { readonly pour: PourResult }): PourTimes => {
  const layers = pour.heat?.layers ?? []
  return {
    lastPourHour: layers.at(-1)?.startHour ?? null,
    demouldHour: pour.heat?.demouldHour ?? null,
    flattenHour: pour.heat?.flattenHour ?? null,
  }
}, OPTIONS_KEPT)

function taskOf({ option, slab, slabResult, shop, figures }: BuildTaskInput): Part<BuildTask> {
  const { footprint, pieces, coverage, resin, pour } = figures.result
  const own = { optionId: option.id, slab: pickSlab(slab), option: pickOption(option), shop }
  const times = pour.state === 'ready' ? timesOf({ pour: pour.value }) : null
  return after(slabResult.shape, (shape) =>
    after(footprint, (footprintValue) =>
      after(pieces, (piecesValue) =>
        after(coverage, (coverageValue) =>
          after(resin, (resinValue) =>
            ready({
              ...own,
              shape: extentOf(shape),
              footprint: footprintValue,
              pieces: piecesValue,
              coverage: coverageValue,
              resin: resinValue,
              pour: times,
            }),
          ),
        ),
      ),
    ),
  ).part
}

/** Only what the task follows from, so that a worker is not sent a slab's photo marks and traces. */
const pickSlab = (slab: Slab): BuildTask['slab'] => {
  const { id, species, moistureFraction, thicknessMm, priceCents, wood } = slab
  return { id, species, moistureFraction, thicknessMm, priceCents, wood }
}

const pickOption = (option: Option): BuildTask['option'] => {
  const { table, footprint, placements, resin, room, form, standing, quote } = option
  return { table, footprint, placements, resin, room, form, standing, quote }
}

const extentOf = ({ lengthMm, widthMm, grossAreaMm2, woodAreaMm2 }: SlabExtent): SlabExtent => ({
  lengthMm,
  widthMm,
  grossAreaMm2,
  woodAreaMm2,
})

function withTask(input: BuildTaskInput): Figures {
  const task = taskOf(input)
  const { result, issues } = input.figures
  const build = task.state === 'ready' ? ({ state: 'pending' } as const) : task
  return { result: { ...result, buildTask: task, build }, issues }
}

interface Answered {
  readonly figures: Figures
  readonly answer: BuildResult | null
}

function withAnswer({ figures, answer }: Answered): Figures {
  if (answer === null) return figures
  return {
    result: { ...figures.result, build: { state: 'ready', value: answer } },
    issues: [...figures.issues, ...answer.issues],
  }
}

const askedFigures = rememberRecent(withTask, OPTIONS_KEPT)
const answeredFigures = rememberRecent(withAnswer, OPTIONS_KEPT)

/**
 * The figures of an option with what is asked of wood, form, weight, work and price, and the answer once it is known.
 * Rules: BLD-11.
 */
export function builtOption(
  input: BuildTaskInput,
  answerOf: (task: BuildTask) => BuildResult | null,
): Figures {
  const figures = askedFigures(input)
  const task = figures.result.buildTask
  return answeredFigures({ figures, answer: task.state === 'ready' ? answerOf(task.value) : null })
}
