import { execFileSync } from 'node:child_process'
import { writeFileSync } from 'node:fs'
import { reportPath } from './browser'

/** How many cases a campaign tries: as many as it is meant to, or CAMPAIGN_CASES for a short trial. */
export const casesOf = (meant: number): number => {
  const said = Number(process.env['CAMPAIGN_CASES'] ?? '')
  return Number.isInteger(said) && said > 0 ? said : meant
}

/** Where the seeds begin: CAMPAIGN_SEED tries others. */
export const firstSeed = (): number => Number(process.env['CAMPAIGN_SEED'] ?? 1)

const commit = (): string => {
  try {
    return execFileSync('git', ['rev-parse', '--short', 'HEAD'], { encoding: 'utf8' }).trim()
  } catch {
    return 'unknown'
  }
}

/** Prints the figures of a campaign and keeps them in reports/campaign/NAME.json, with the commit. */
export function reportCampaign(name: string, figures: Readonly<Record<string, unknown>>): void {
  const text = JSON.stringify({ name, commit: commit(), ...figures }, null, 1)
  writeFileSync(reportPath('campaign', `${name}.json`), `${text}\n`)
  console.log(text)
}
