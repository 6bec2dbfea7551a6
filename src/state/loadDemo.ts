import type { Plan } from '../core/plan'
import { InvariantError, problem, type Result } from '../core/units'
import { importPhoto } from './importPhoto'
import { adoptPlan, type OpenedPlan } from './plans'

/** The build turns these addresses into files beside the program, wherever it is served from. */
const DEMOS = {
  'library-table': {
    plan: new URL('../../demo-data/library-table/plan.json', import.meta.url),
    photo: new URL('../../demo-data/library-table/slab.jpg', import.meta.url),
  },
  'kitchen-table': {
    plan: new URL('../../demo-data/kitchen-table/plan.json', import.meta.url),
    photo: new URL('../../demo-data/kitchen-table/slab.jpg', import.meta.url),
  },
} as const

export type DemoName = keyof typeof DEMOS

async function fetched(url: URL): Promise<Result<Blob>> {
  try {
    const response = await fetch(url)
    if (response.ok) return { ok: true, value: await response.blob() }
  } catch {
    // Offline, and not yet in the browser's cache.
  }
  return problem('demo-unreachable')
}

/** Our own file: what it lacks is our bug. */
async function demoPlan(text: string): Promise<Plan> {
  const { parsePlan, readPlanText } = await import('./planReader')
  const json = readPlanText(text)
  const parsed = json.ok ? parsePlan(json.value) : json
  if (!parsed.ok) throw new InvariantError('demo plan unreadable', { ...parsed.problem })
  if (parsed.value.lost.length > 0) throw new InvariantError('demo plan broken', { lost: parsed.value.lost })
  return parsed.value.plan
}

/** The name under which the plan knows its photo. */
function photoOf(plan: Plan): { readonly hash: string; readonly fileName: string } {
  const [slab] = plan.slabs
  const photo = slab?.capture.kind === 'photo' ? slab.capture.photos[0] : undefined
  if (photo === undefined) throw new InvariantError('demo plan without a photo', { id: plan.id })
  return photo
}

/** Puts one of the invented demo jobs on the bench; its photo takes the same way in as a maker's own. */
export async function loadDemo(name: DemoName): Promise<Result<OpenedPlan>> {
  const [planFile, photoFile] = [await fetched(DEMOS[name].plan), await fetched(DEMOS[name].photo)]
  if (!planFile.ok) return planFile
  if (!photoFile.ok) return photoFile
  const plan = await demoPlan(await planFile.value.text())
  const { hash, fileName } = photoOf(plan)
  const imported = await importPhoto(photoFile.value, fileName)
  if (!imported.ok) return imported
  if (imported.value.hash !== hash) throw new InvariantError('demo photo is not the plan’s', { hash })
  return adoptPlan(plan)
}
