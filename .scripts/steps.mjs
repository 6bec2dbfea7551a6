import { spawn } from 'node:child_process'
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs'
import { nodeProgram } from './nodeProgram.mjs'
import { inRoot, root } from './root.mjs'

/** @typedef {{ passed: number, failed: number }} Counts */
/**
 * A step is a command line, or a function that throws when it fails.
 * @typedef {{ name: string, command?: string[], run?: () => unknown, countsFrom?: string }} Step
 */

/** @param {number} sinceMs */
const secondsSince = (sinceMs) => ((Date.now() - sinceMs) / 1000).toFixed(1)

/**
 * Runs one command, keeping what it prints.
 * @param {string[]} command
 * @param {number} timeoutMs the command is ended after that
 * @returns {Promise<{ ok: boolean, output: string }>}
 */
const runCommand = ([program, ...args], timeoutMs) =>
  new Promise((resolve) => {
    let output = ''
    const child = spawn(/** @type {string} */ (program), args, {
      cwd: root,
      env: { ...process.env, NO_COLOR: '1', FORCE_COLOR: '0' },
      stdio: ['ignore', 'pipe', 'pipe'],
    })
    const timer = setTimeout(() => {
      output += `\nStopped: the time for all steps together was used up.\n`
      child.kill('SIGTERM')
      setTimeout(() => child.kill('SIGKILL'), 10_000).unref()
    }, timeoutMs)
    child.stdout.on('data', (text) => (output += text))
    child.stderr.on('data', (text) => (output += text))
    child.on('error', (error) => (output += `${error.message}\n`))
    child.on('close', (code) => {
      clearTimeout(timer)
      resolve({ ok: code === 0, output })
    })
  })

/**
 * @param {() => unknown} run
 * @returns {Promise<{ ok: boolean, output: string }>}
 */
const runFunction = async (run) => {
  try {
    const said = await run()
    return { ok: true, output: typeof said === 'string' ? said : '' }
  } catch (error) {
    return { ok: false, output: error instanceof Error ? error.message : String(error) }
  }
}

/** @param {string} file @returns {Counts} */
const readCounts = (file) => {
  if (!existsSync(file)) return { passed: 0, failed: 0 }
  const report = JSON.parse(readFileSync(file, 'utf8'))
  // A file that did not even load fails without a failed test in it.
  const brokenFiles = report.testResults.filter(
    (/** @type {{ status: string, assertionResults: unknown[] }} */ suite) =>
      suite.status === 'failed' && suite.assertionResults.length === 0,
  ).length
  return { passed: report.numPassedTests, failed: report.numFailedTests + brokenFiles }
}

/**
 * @param {Step} step
 * @param {number} timeoutMs
 */
const runStep = async (step, timeoutMs) => {
  const startedMs = Date.now()
  process.stdout.write(`${step.name.padEnd(28, ' ')}`)
  const { ok, output } = step.command
    ? await runCommand(step.command, timeoutMs)
    : await runFunction(step.run ?? (() => undefined))
  const counts = step.countsFrom ? readCounts(step.countsFrom) : { passed: 0, failed: 0 }
  const tests = step.countsFrom ? `  ${counts.passed} passed, ${counts.failed} failed` : ''
  const remark = !step.command && ok && output ? `  ${output}` : ''
  console.log(`${ok ? 'ok    ' : 'FAILED'} ${secondsSince(startedMs).padStart(6)} s${tests}${remark}`)
  if (!ok) console.log(`\n${output.trim()}\n`)
  return { ok, counts }
}

/**
 * Runs the steps in order and stops at the first that fails. Prints each step's name and time, and at the end one
 * line with the count of tests.
 * @param {readonly Step[]} steps
 * @param {number} limitMinutes for all steps together
 * @returns {Promise<boolean>} whether all went well
 */
export const runSteps = async (steps, limitMinutes) => {
  const startedMs = Date.now()
  let passed = 0
  let failed = 0
  for (const step of steps) {
    const remainingMs = limitMinutes * 60_000 - (Date.now() - startedMs)
    const { ok, counts } = await runStep(step, Math.max(1, remainingMs))
    passed += counts.passed
    failed += ok ? 0 : Math.max(1, counts.failed)
    if (!ok) break
  }
  console.log(`\nTotal time ${secondsSince(startedMs)} s\n${passed} passed, ${failed} failed`)
  return failed === 0
}

/**
 * The step that runs some of the test projects of vite.config.ts.
 * @param {string} name
 * @param {string[]} projects
 * @returns {Step}
 */
export const testStep = (name, projects) => {
  const countsFrom = inRoot('reports', `${name.replaceAll(/\W+/g, '-')}.json`)
  mkdirSync(inRoot('reports'), { recursive: true })
  rmSync(countsFrom, { force: true })
  const command = nodeProgram(
    'vitest',
    'run',
    ...projects.flatMap((project) => ['--project', project]),
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${countsFrom}`,
  )
  return { name, command, countsFrom }
}
