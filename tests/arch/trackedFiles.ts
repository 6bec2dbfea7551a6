import { execFileSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

export const projectRoot = fileURLToPath(new URL('../../', import.meta.url))

/** What the repository holds, as paths from its top folder; files deleted but not yet committed left out. */
export const trackedFiles = (): readonly string[] =>
  execFileSync('git', ['ls-files', '-z'], { cwd: projectRoot, encoding: 'utf8' })
    .split('\0')
    .filter((file) => file !== '' && existsSync(join(projectRoot, file)))

export const readTracked = (file: string): string => readFileSync(join(projectRoot, file), 'utf8')

const BINARY = /\.(jpe?g|png|webp|gif|ico|woff2?|ttf|zip|pdf)$/i

export const trackedTexts = (): readonly string[] => trackedFiles().filter((file) => !BINARY.test(file))
