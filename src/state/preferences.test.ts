import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { keepPreferences, readPreferences } from './preferences'

let kept: string | null = null

beforeEach(() => {
  kept = null
  vi.stubGlobal('localStorage', {
    getItem: () => kept,
    setItem: (_: string, text: string) => {
      kept = text
    },
  })
})
afterEach(() => vi.unstubAllGlobals())

describe('preferences', () => {
  it('are read back as they were kept', () => {
    const preferences = {
      display: { system: 'inch', fraction: 32 },
      paper: 'tabloid',
      sheets: readPreferences().sheets.slice(0, 2),
      bright: true,
      ownBoards: [{ lengthMm: 1200, widthMm: 600, thicknessMm: 6 }],
      ownRules: [{ lengthMm: 2000, thicknessMm: 0 }],
    } as const
    keepPreferences(preferences)
    expect(readPreferences()).toEqual(preferences)
  })

  it('lose only what cannot be read', () => {
    const board = { lengthMm: 1200, widthMm: 600, thicknessMm: 6 }
    kept = JSON.stringify({
      display: { system: 'cubit' },
      paper: 'a4',
      sheets: ['no such sheet'],
      bright: 'yes',
      ownBoards: [board, { lengthMm: -1, widthMm: 600, thicknessMm: 6 }, 'plank', { ...board, widthMm: 1e9 }],
    })
    const read = readPreferences()
    expect(['mm', 'inch']).toContain(read.display.system)
    expect(read).toMatchObject({ paper: 'a4', sheets: [], bright: false, ownBoards: [board], ownRules: [] })
  })

  it.each(['', 'null', '[]', '7', '{"display":', '{"ownBoards":{"length":3}}'])(
    'start anew on what is no set of preferences: %s',
    (text) => {
      kept = text
      expect(readPreferences()).toMatchObject({ paper: null, bright: false, ownBoards: [], ownRules: [] })
    },
  )
})
