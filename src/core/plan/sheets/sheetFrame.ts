import {
  type Box,
  CAP_HEIGHT,
  type DrawItem,
  type Orientation,
  type PaperName,
  type Sheet,
  STROKES,
  paperSize,
  shortenText,
  textItem,
} from '../../drawing'
import type { Plan } from '../schema'
import type { SheetText } from '../text/en/sheet'
import { revisionMark } from './revisionMark'
import { MARGIN_MM, SIZE } from './sheetStyle'

export interface SheetPage {
  readonly title: string
  /** Right of the title: what the page belongs to. */
  readonly about: string
  readonly items: readonly DrawItem[]
}

export interface SheetJob {
  readonly plan: Plan
  readonly paper: PaperName
  readonly orientation: Orientation
  readonly dateText: string
  readonly text: SheetText
}

const HEAD_MM = 10
const FOOT_MM = 8
/** Share of the width that the title may take. */
const TITLE_SHARE = 0.4
/** Shares of the foot: the plan's name; revision, title and date; the page has the rest. */
const NAME_SHARE = 0.36
const MIDDLE_SHARE = 0.46

/** The part of a page between head and foot, mm. */
export function contentBox(paper: PaperName, orientation: Orientation): Box {
  const { widthMm, heightMm } = paperSize(paper, orientation)
  return {
    xMm: MARGIN_MM,
    yMm: MARGIN_MM + HEAD_MM,
    widthMm: widthMm - 2 * MARGIN_MM,
    heightMm: heightMm - 2 * MARGIN_MM - HEAD_MM - FOOT_MM,
  }
}

function head(page: SheetPage, widthMm: number): readonly DrawItem[] {
  const baseline = MARGIN_MM + CAP_HEIGHT * SIZE.title
  const right = MARGIN_MM + widthMm
  const title = { sizeMm: SIZE.title, weight: 'bold', maxWidthMm: widthMm * TITLE_SHARE } as const
  const about = { sizeMm: SIZE.body, maxWidthMm: widthMm * (1 - TITLE_SHARE) - 4, anchor: 'end' } as const
  const rule = MARGIN_MM + HEAD_MM - 4
  return [
    textItem(shortenText(page.title, title), [MARGIN_MM, baseline], title),
    textItem(shortenText(page.about, about), [right, baseline], about),
    {
      kind: 'segments',
      segments: [
        [
          [MARGIN_MM, rule + 0.8],
          [right, rule + 0.8],
        ],
      ],
      stroke: STROKES.rule,
    },
  ]
}

function foot(page: SheetPage, job: SheetJob, number: number, of: number): readonly DrawItem[] {
  const { widthMm, heightMm } = paperSize(job.paper, job.orientation)
  const [left, right] = [MARGIN_MM, widthMm - MARGIN_MM]
  const baseline = heightMm - MARGIN_MM - 0.8
  const style = { sizeMm: SIZE.note } as const
  const room = (share: number): number => (right - left) * share - 2
  const rule = heightMm - MARGIN_MM - 4.6
  const pageText = job.text.sheetPage({ page: String(number), pages: String(of) })
  // First, so that a long name cannot push it off the sheet.
  const name = job.plan.invented ? `${job.text.sheetInvented} · ${job.plan.name}` : job.plan.name
  const mark = job.text.sheetRevision({ mark: revisionMark(job.plan) })
  const middle = `${mark} · ${page.title} · ${job.dateText}`
  return [
    {
      kind: 'segments',
      segments: [
        [
          [left, rule],
          [right, rule],
        ],
      ],
      stroke: STROKES.thin,
    },
    textItem(shortenText(name, { ...style, maxWidthMm: room(NAME_SHARE) }), [left, baseline], {
      ...style,
      maxWidthMm: room(NAME_SHARE),
    }),
    textItem(
      shortenText(middle, { ...style, maxWidthMm: room(MIDDLE_SHARE) }),
      [left + (right - left) * NAME_SHARE, baseline],
      {
        ...style,
        maxWidthMm: room(MIDDLE_SHARE),
      },
    ),
    textItem(pageText, [right, baseline], {
      ...style,
      maxWidthMm: room(1 - NAME_SHARE - MIDDLE_SHARE),
      anchor: 'end',
    }),
  ]
}

/** Pages with head, foot and numbers: sheets of one size. Rules: SHT-1. */
export function framedSheets(pages: readonly SheetPage[], job: SheetJob): readonly Sheet[] {
  const size = paperSize(job.paper, job.orientation)
  return pages.map((page, k) => ({
    title: page.title,
    paper: job.paper,
    orientation: job.orientation,
    ...size,
    items: [
      ...head(page, size.widthMm - 2 * MARGIN_MM),
      ...page.items,
      ...foot(page, job, k + 1, pages.length),
    ],
  }))
}
