// Makes slabs from a seed, runs every search on them, attacks what they prove, and times them: one JSON line a case, then
// a summary; ends with 1 where a figure is missed. npm run bench:cover -- --seed N [--slabs COUNT] [--sabotage]
import { runBuilt } from '../runBuilt.mjs'

await runBuilt('cover')
