const KEY = 'waneline-last-plan'

const written = (storage: () => Storage | undefined, id: string): void => {
  try {
    storage()?.setItem(KEY, id)
  } catch {
    // A browser that keeps nothing for us opens on the demo next time.
  }
}

const read = (storage: () => Storage | undefined): string | null => {
  try {
    return storage()?.getItem(KEY) ?? null
  } catch {
    return null
  }
}

const ofTab = (): Storage | undefined => globalThis.sessionStorage
const ofBrowser = (): Storage | undefined => globalThis.localStorage

/** Notes which plan this tab has on its bench, for when it is reloaded, and for the next tab. */
export function rememberPlan(id: string): void {
  written(ofTab, id)
  written(ofBrowser, id)
}

/** The plan that this tab had before it was reloaded, else the last one of this browser. */
export const rememberedPlan = (): string | null => read(ofTab) ?? read(ofBrowser)
