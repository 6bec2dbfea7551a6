import { spawnSync } from 'node:child_process'
import { accessSync, constants, statSync } from 'node:fs'
import { delimiter, join } from 'node:path'

/** @param {string} file */
const isProgram = (file) => {
  try {
    accessSync(file, constants.X_OK)
    return statSync(file).isFile()
  } catch {
    return false
  }
}

/** @param {string} program */
const onPath = (program) =>
  (process.env['PATH'] ?? '').split(delimiter).map((folder) => join(folder, program))

const linuxNames = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'microsoft-edge']

const macApps = ['Chromium', 'Google Chrome', 'Microsoft Edge']

const windowsPrograms = [
  ['Chromium', 'Application', 'chrome.exe'],
  ['Google', 'Chrome', 'Application', 'chrome.exe'],
  ['Microsoft', 'Edge', 'Application', 'msedge.exe'],
]

const windowsFolders = ['LOCALAPPDATA', 'PROGRAMFILES', 'PROGRAMFILES(X86)']

const candidates = () => {
  if (process.platform === 'darwin') {
    return macApps.flatMap((app) =>
      ['', process.env['HOME'] ?? ''].map((home) => `${home}/Applications/${app}.app/Contents/MacOS/${app}`),
    )
  }
  if (process.platform === 'win32') {
    return windowsFolders.flatMap((name) =>
      windowsPrograms.map((parts) => join(process.env[name] ?? '', ...parts)),
    )
  }
  return linuxNames.flatMap(onPath)
}

/**
 * The Chromium, Chrome or Edge that the tests drive: CHROMIUM_PATH when set, else the first one installed.
 * @returns {string | undefined}
 */
export const findBrowser = () => {
  const named = process.env['CHROMIUM_PATH']
  if (named) return isProgram(named) ? named : undefined
  return candidates().find(isProgram)
}

const canInstallWithApt = () =>
  process.platform === 'linux' && process.getuid?.() === 0 && onPath('apt-get').some(isProgram)

/** @param {string[]} args */
const aptGet = (...args) =>
  spawnSync('apt-get', args, {
    stdio: 'inherit',
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  }).status === 0

export const noBrowserSentence = () =>
  process.env['CHROMIUM_PATH']
    ? `CHROMIUM_PATH says ${process.env['CHROMIUM_PATH']}, but there is no program there. Correct it, or unset it to use an installed browser.`
    : 'The tests need a browser: install Chromium, Chrome or Edge, or set CHROMIUM_PATH to the program of one.'

/**
 * Finds the browser, and installs Debian's when there is none and we may (apt-get, as root).
 * @returns {string} the program's path
 * @throws Error with a sentence for the developer when there is none to be had
 */
export const ensureBrowser = () => {
  const found = findBrowser()
  if (found) return found
  if (!process.env['CHROMIUM_PATH'] && canInstallWithApt()) {
    console.log('Installing a browser for the tests (apt-get install chromium) ...')
    aptGet('update', '-qq')
    aptGet('install', '-y', '-qq', '--no-install-recommends', 'chromium')
  }
  const installed = findBrowser()
  if (!installed) throw new Error(noBrowserSentence())
  return installed
}
