import { chmodSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, describe, expect, it, vi } from 'vitest'
import { ensureBrowser, findBrowser } from '../../.scripts/browser.mjs'
import { isInstalled } from '../../.scripts/install.mjs'
import { firstLoadFiles } from '../../.scripts/scriptSize.mjs'
import { runSteps } from '../../.scripts/steps.mjs'

afterEach(() => {
  vi.unstubAllEnvs()
  vi.restoreAllMocks()
})

const withFolder = (use: (folder: string) => void): void => {
  const folder = mkdtempSync(join(tmpdir(), 'scripts-'))
  try {
    use(folder)
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

const linux = process.platform === 'linux'

describe('the browser of the tests', () => {
  it('is the one that CHROMIUM_PATH names, and a wrong name is told', () => {
    vi.stubEnv('CHROMIUM_PATH', process.execPath)
    expect(findBrowser()).toBe(process.execPath)
    vi.stubEnv('CHROMIUM_PATH', `${process.execPath}-missing`)
    expect(() => ensureBrowser()).toThrow(/CHROMIUM_PATH says .*-missing, but there is no program there/)
  })

  it.runIf(linux)('is looked for on the path, and asked for in a sentence when there is none', () => {
    withFolder((folder) => {
      vi.stubEnv('CHROMIUM_PATH', '')
      vi.stubEnv('PATH', folder)
      expect(() => ensureBrowser()).toThrow('install Chromium, Chrome or Edge, or set CHROMIUM_PATH')
      const program = join(folder, 'google-chrome')
      writeFileSync(program, '')
      expect(findBrowser()).toBeUndefined()
      chmodSync(program, 0o755)
      expect(findBrowser()).toBe(program)
    })
  })

  it.runIf(linux && process.getuid?.() === 0)('comes by apt-get when root may install it', () => {
    withFolder((folder) => {
      const browser = join(folder, 'chromium')
      // Stands for apt-get: writes down what it was asked, and "installs" when asked to.
      const apt = `#!/bin/sh\necho "$@" >> ${folder}/asked\nif [ "$1" = install ]; then printf '' > ${browser}; /bin/chmod 755 ${browser}; fi\n`
      writeFileSync(join(folder, 'apt-get'), apt, { mode: 0o755 })
      vi.stubEnv('CHROMIUM_PATH', '')
      vi.stubEnv('PATH', folder)
      vi.spyOn(console, 'log').mockImplementation(() => undefined)
      expect(ensureBrowser()).toBe(browser)
    })
  })
})

describe('the packages', () => {
  it('are known to be installed, for this test runs', () => {
    expect(isInstalled()).toBe(true)
  })
})

describe('the first-load script', () => {
  const html =
    '<script type="module" src="./assets/a.js"></script><link rel="modulepreload" href="./assets/b.js">'

  it('is the entry, what it imports at once, and what is preloaded, each once', () => {
    const manifest = {
      'index.html': {
        file: 'assets/a.js',
        isEntry: true,
        imports: ['_b.js', '_c.js'],
        dynamicImports: ['lazy'],
      },
      '_b.js': { file: 'assets/b.js', imports: ['_c.js'] },
      '_c.js': { file: 'assets/c.js', imports: ['index.html'] },
      lazy: { file: 'assets/lazy.js' },
    }
    expect(firstLoadFiles(html, manifest)).toEqual(['assets/a.js', 'assets/b.js', 'assets/c.js'])
  })

  it('cannot be nothing', () => {
    expect(() => firstLoadFiles('<p>no script</p>', {})).toThrow('loads no script')
  })
})

describe('the steps of npm test', () => {
  const lines = (): string[] => {
    const said: string[] = []
    vi.spyOn(console, 'log').mockImplementation((text: unknown) => void said.push(String(text)))
    vi.spyOn(process.stdout, 'write').mockImplementation(() => true)
    return said
  }
  const node = (code: string): string[] => [process.execPath, '-e', code]

  it('stop at the first that fails, show what it said, and count it', async () => {
    const said = lines()
    const later = vi.fn()
    const steps = [
      { name: 'good', command: node('') },
      { name: 'bad', command: node('console.log("it broke here"); process.exit(3)') },
      { name: 'later', run: later },
    ]
    expect(await runSteps(steps, 1)).toBe(false)
    expect(said.join('\n')).toContain('it broke here')
    expect(said.at(-1)).toMatch(/\n0 passed, 1 failed$/)
    expect(later).not.toHaveBeenCalled()
  })

  it('add up the counts of the test reports, a file that did not load included', async () => {
    const said = lines()
    const folder = mkdtempSync(join(tmpdir(), 'steps-'))
    mkdirSync(folder, { recursive: true })
    const report = (name: string, text: object): string => {
      const file = join(folder, name)
      writeFileSync(file, JSON.stringify(text))
      return file
    }
    const good = report('good.json', { numPassedTests: 5, numFailedTests: 0, testResults: [] })
    const bad = report('bad.json', {
      numPassedTests: 2,
      numFailedTests: 1,
      testResults: [{ status: 'failed', assertionResults: [] }],
    })
    const steps = [
      { name: 'good', command: node(''), countsFrom: good },
      { name: 'bad', command: node('process.exit(1)'), countsFrom: bad },
    ]
    expect(await runSteps(steps, 1)).toBe(false)
    rmSync(folder, { recursive: true, force: true })
    expect(said.at(-1)).toMatch(/\n7 passed, 2 failed$/)
  })

  it('are ended when their time is used up', async () => {
    const said = lines()
    const steps = [{ name: 'slow', command: node('setTimeout(() => undefined, 60_000)') }]
    expect(await runSteps(steps, 0.005)).toBe(false)
    expect(said.join('\n')).toContain('the time for all steps together was used up')
  })
})
