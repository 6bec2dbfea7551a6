import { LEANING_KG } from '../../form'
import { LEAST_READINGS } from '../../wood'
import { type Issue, issueOf } from '../issue'
import { buildWords } from '../text/en/buildWords'
import type { BuildCode } from './buildCodes'
import type { BuildResult, FormFigures } from './buildResult'
import type { BuildTask } from './buildTask'

type Figures = Omit<BuildResult, 'issues'>
type Say = (
  code: BuildCode,
  severity: Issue['severity'],
  values?: Issue['values'],
  where?: readonly string[],
) => Issue

/** Narrowing from here on is told, mm. Common practice, no source: what a joint or a base feels. */
const TELLING_MM = 4

/** All that a maker should know before work begins. Rules: BLD-10. */
export function buildIssues(task: BuildTask, figures: Figures): readonly Issue[] {
  const at = ['options', task.optionId, 'build']
  const say: Say = (code, severity, values = {}, where = []) =>
    issueOf(code, severity, [...at, ...where], values)
  return [
    ...woodIssues(task, figures, say),
    ...flatteningIssues(task, figures, say),
    ...formIssues(figures, say),
    ...standingIssues(figures, say),
    ...workIssues(task, figures, say),
  ]
}

function woodIssues({ slab, option }: BuildTask, { wood }: Figures, say: Say): readonly Issue[] {
  const { moistureFraction } = slab
  const { greatestPourMoisture } = option.room
  const issues: Issue[] = []
  if (wood.species === null) issues.push(say('build-species-unknown', 'note'))
  if (moistureFraction === null) issues.push(say('build-moisture-missing', 'note'))
  else if (moistureFraction > greatestPourMoisture)
    issues.push(
      say('build-moisture-high', 'warning', { share: moistureFraction, limitFraction: greatestPourMoisture }),
    )
  for (const { name, toDryMm } of wood.movements)
    if (toDryMm <= -TELLING_MM)
      issues.push(say('build-moves', 'note', { pieceName: name, changeMm: -toDryMm }, [name]))
  return issues
}

function flatteningIssues({ slab, option }: BuildTask, { flattening }: Figures, say: Say): readonly Issue[] {
  const count = slab.wood.heights.length
  if (count > 0 && count < LEAST_READINGS) return [say('build-readings-few', 'note', { count })]
  const { whole, pieces } = flattening
  if (whole === null || whole.overWantedMm >= 0) return []
  const { thicknessMm } = option.table
  const values = { flatMm: whole.flatMm, thicknessMm }
  const flats = pieces.flatMap((piece) => (piece.flattening === null ? [] : [piece.flattening.flatMm]))
  const pieceMm = Math.min(...flats)
  return flats.length > 1 && flats.length === pieces.length && pieceMm >= thicknessMm
    ? [say('build-thin-unless-ripped', 'warning', { ...values, pieceMm })]
    : [say('build-thin-when-flat', 'warning', { ...values, leftMm: -whole.overWantedMm })]
}

function formIssues({ form, weight }: Figures, say: Say): readonly Issue[] {
  const four = weight.carriers.top.find(({ carriers }) => carriers === 4)
  const heavy =
    four?.isAboveConstant === true
      ? [say('build-top-heavy', 'warning', { massKg: weight.topKg, eachKg: four.kgEach })]
      : []
  if (form === null) return heavy
  const massKg = Math.max(0, ...weight.piecesKg.map((piece) => piece.massKg))
  const round = form.buildRound ? [say('build-form-round', 'note', { massKg })] : []
  return [...heavy, ...sheetIssues(form, say), ...round]
}

function sheetIssues({ parts, cutting, isProvenLeast, tooLarge }: FormFigures, say: Say): readonly Issue[] {
  if (cutting !== null) return isProvenLeast ? [] : [say('build-sheets-unproven', 'note')]
  if (tooLarge.length === 0) return [say('build-sheets-short', 'warning')]
  return tooLarge.flatMap((place) => {
    const part = parts[place]
    if (part === undefined) return []
    const { name: pieceName, lengthMm, widthMm } = part
    return [say('build-sheet-too-small', 'warning', { pieceName, lengthMm, widthMm }, [pieceName])]
  })
}

function standingIssues({ standing }: Figures, say: Say): readonly Issue[] {
  const { stance } = standing
  const ways = [
    [standing.door, 'build-door'],
    [standing.lift, 'build-lift'],
    [standing.turn, 'build-turn'],
  ] as const
  const blocked = ways.filter(([passes]) => passes === false).map(([, code]) => say(code, 'warning'))
  if (stance === null) return [say('build-no-feet', 'warning'), ...blocked]
  if (!stance.isStanding) return [say('build-falls', 'warning'), ...blocked]
  const { worst } = stance
  const tipsAtKg = worst?.tipsAtKg ?? Infinity
  return worst !== null && tipsAtKg < LEANING_KG
    ? [say('build-tips', 'warning', { massKg: tipsAtKg, overhangMm: worst.overhangMm }), ...blocked]
    : blocked
}

function workIssues({ slab, shop }: BuildTask, { work }: Figures, say: Say): readonly Issue[] {
  const early = work.steps.flatMap(({ id, needsLater }) =>
    needsLater.map((need) =>
      say('build-step-early', 'warning', { stepName: buildWords.step(id), needName: buildWords.step(need) }, [
        id,
        need,
      ]),
    ),
  )
  return [
    ...early,
    ...(slab.priceCents === null ? [say('build-slab-unpriced', 'note')] : []),
    ...(shop.hourCents === 0 ? [say('build-hours-unpriced', 'note')] : []),
  ]
}
