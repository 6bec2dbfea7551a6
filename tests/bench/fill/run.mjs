// Plants puzzles and makes slabs from a seed and fills them, beside what is best known and a plain solver: one JSON line a
// case, then a summary; ends with 1 where a figure is missed. npm run bench:fill -- --seed N [--spoil] [--puzzles COUNT]
// [--known SECONDS] [--record SECONDS: prints the best known instead].
import { runBuilt } from '../runBuilt.mjs'

await runBuilt('fill')
