import { availableParallelism } from 'node:os'
import { fileURLToPath } from 'node:url'
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads'
import { z } from 'zod'
import { benchPhoto, type PhotoLine } from './benchPhoto'
import { photosWithTruth } from './photoTruth'
import { missedTargets } from './targets'

const TRIALS = 200
const SEED = 20_260_701

const taskSchema = z.object({ folder: z.string(), file: z.string(), trials: z.number() })

/** One photo in a thread of its own. */
const inThread = (task: z.infer<typeof taskSchema>): Promise<PhotoLine> =>
  new Promise((resolve, reject) => {
    const worker = new Worker(fileURLToPath(import.meta.url), { workerData: task })
    worker.once('message', resolve)
    worker.once('error', reject)
  })

async function run(folder: string, trials: number): Promise<number> {
  const files = photosWithTruth(folder)
  if (files.length === 0) {
    console.error(`No photo with a truth file in ${folder}`)
    return 1
  }
  const lines: PhotoLine[] = []
  const waiting = [...files]
  const next = async (): Promise<void> => {
    for (let file = waiting.shift(); file !== undefined; file = waiting.shift()) {
      const line = await inThread({ folder, file, trials })
      lines.push(line)
      console.log(JSON.stringify(line))
    }
  }
  await Promise.all(Array.from({ length: Math.min(availableParallelism(), files.length) }, next))
  return summary(lines)
}

/** A short table for people, and the verdict. */
function summary(lines: readonly PhotoLine[]): number {
  for (const line of [...lines].sort((a, b) => a.photo.localeCompare(b.photo))) {
    for (const name of ['flat, line', 'flat, no line']) {
      const f = line.conditions[name]
      if (!f) continue
      console.log(
        `${line.photo} ${line.references.join('+')} ${name}: length median ${f.medianErrorPercent} %, ` +
          `95th ${f.p95ErrorPercent} %, interval holds ${f.coveragePercent} %, sd/rms ${f.sdOverRms}, ` +
          `area 95th ${f.areaP95ErrorPercent} %${f.problems.length > 0 ? `, says ${f.problems.join(', ')}` : ''}`,
      )
    }
  }
  const missed = missedTargets(lines)
  for (const miss of missed) console.log(`MISSED ${miss}`)
  console.log(missed.length === 0 ? 'All targets met.' : `${missed.length} targets missed.`)
  return missed.length === 0 ? 0 : 1
}

if (isMainThread) {
  const [folder = 'tests/photos', trials = String(TRIALS)] = process.argv.slice(2)
  process.exitCode = await run(folder, Number(trials))
} else {
  const task = taskSchema.parse(workerData)
  parentPort?.postMessage(benchPhoto(task.folder, task.file, task.trials, SEED))
}
