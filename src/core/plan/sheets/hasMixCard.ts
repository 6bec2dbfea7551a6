import type { SheetInput } from './sheetInput'
import { BENCH_SHEETS } from './sheetKinds'

/** Whether a mix card is printed: it then bears what to mix and the dangers of the pour, which are said once. */
export const hasMixCard = ({ kinds = BENCH_SHEETS, pour }: Pick<SheetInput, 'kinds' | 'pour'>): boolean =>
  kinds.includes('mix') && pour !== null && pour.heat !== null
