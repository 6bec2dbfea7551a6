import { clientQuote, quoteOf } from '../../quote'
import { buildIssues } from './buildIssues'
import type { BuildResult } from './buildResult'
import type { BuildTask } from './buildTask'
import { costItems, shoppingList, woodMoneyOf, yardMeasure } from './costItems'
import { formFigures } from './formFigures'
import { standingFigures } from './standingFigures'
import { weightFigures } from './weightFigures'
import { flatteningFigures, woodFigures } from './woodFigures'
import { workFigures } from './workFigures'

/**
 * Wood, form, weight, stance, work and price of an option: what a worker does, and what tests call directly.
 * @returns the same answer for the same task; never throws on a maker's figures
 * Rules: BLD-1 to BLD-10.
 */
export function answerBuild(task: BuildTask): BuildResult {
  const weight = weightFigures(task)
  const form = formFigures(task, weight)
  const parts = { task, weight, form }
  const measure = yardMeasure(task)
  const quote = quoteOf(costItems(parts, measure), task.shop)
  const figures = {
    wood: woodFigures(task),
    flattening: flatteningFigures(task),
    weight,
    form,
    standing: standingFigures(task, weight),
    work: workFigures(task),
    price: { quote, client: clientQuote(quote), measure, wood: woodMoneyOf(parts, measure) },
    shopping: shoppingList(parts),
  }
  return { ...figures, issues: buildIssues(task, figures) }
}
