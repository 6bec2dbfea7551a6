import type { Isometry, Point, PxPoint, Region, TablePoint } from '../../../core/geometry'
import type { Option, OptionResult, Photo, Plan, Slab, SlabPiece, SlabResult } from '../../../core/plan'
import type { BoardSize, RuleSize } from '../../../state/preferences'
import type { Selection, Stage, ToolName, ViewName } from '../../../state/sessionStore'
import type { Frames } from '../frames'
import type { Camera, Size } from '../view'
import type { TracingState } from '../../../state/tracingStore'
import type { Say } from '../say'
import type { ToolCommand } from './toolCommand'
import type { TraceOrder } from './traceOrder'

/** 'keys' stands for the crosshair that the arrow keys move. */
export type PointerKind = 'mouse' | 'touch' | 'pen' | 'keys'

export type ArrowKey = 'ArrowLeft' | 'ArrowRight' | 'ArrowUp' | 'ArrowDown'
export type ToolKey = ArrowKey | 'Enter' | 'Escape' | 'Backspace' | 'Delete' | '[' | ']' | 'o'

/** What reaches a tool. Screen points are CSS px from the canvas's top-left corner. */
export type ToolEvent =
  | { readonly kind: 'press'; readonly screen: Point; readonly pointer: PointerKind }
  | { readonly kind: 'drag'; readonly screen: Point }
  | { readonly kind: 'release'; readonly screen: Point }
  /** Pressed and let go without a drag, after the tool declined the press. */
  | { readonly kind: 'tap'; readonly screen: Point; readonly pointer: PointerKind }
  /** The gesture is off: a second finger came down, or the browser took the pointer away. */
  | { readonly kind: 'abandon' }
  | {
      readonly kind: 'key'
      readonly key: ToolKey
      readonly shift: boolean
      readonly alt: boolean
      /** Where the crosshair is, when it was moved since it last set something. */
      readonly crosshair: Point | null
    }
  | { readonly kind: 'keyRelease' }
  /** Undo was asked for: give up the last unfinished thing, if there is one. */
  | { readonly kind: 'takeBack' }

/** What a drag of a photo point moves. */
export type PointTarget =
  | { readonly kind: 'mark'; readonly markId: string }
  | { readonly kind: 'tracePoint'; readonly traceId: string; readonly index: number }
  /** A point that the drag itself puts into the ring, before `index`. */
  | { readonly kind: 'newTracePoint'; readonly traceId: string; readonly index: number }
  | { readonly kind: 'datumEnd'; readonly end: 'from' | 'to' }
  | { readonly kind: 'linePoint'; readonly lineId: string; readonly index: number }

/** What a drag of something rigid moves or turns. */
export type PoseTarget =
  | { readonly kind: 'footprint' }
  | { readonly kind: 'placement'; readonly placementId: string }
  /** An offcut in the tray beside the table; the ids are what it gets when it is laid down. */
  | {
      readonly kind: 'tray'
      readonly pieceKey: string
      readonly pieceId: string
      readonly placementId: string
    }

export type HandleKind =
  | 'mark'
  | 'tracePoint'
  | 'trace'
  | 'linePoint'
  | 'datumEnd'
  | 'footprint'
  | 'turnHandle'
  | 'cut'
  | 'piece'
  | 'placement'

/** Something that can be selected or grabbed, with its place on screen. */
export interface Handle {
  readonly id: string
  readonly kind: HandleKind
  readonly label: string
  readonly screen: Point
  readonly world: Point
  readonly selection: Selection | null
  readonly grab:
    | { readonly kind: 'point'; readonly target: PointTarget; readonly at: PxPoint }
    | { readonly kind: 'turn'; readonly target: PoseTarget }
    | null
}

/** An offcut as it lies in the tray, in the table frame. */
export interface TrayPiece {
  readonly piece: SlabPiece
  /** Pose of the slab frame in the table frame. */
  readonly pose: Isometry
  readonly region: Region<TablePoint>
}

/** All that a tool may look at. Made from the plan without any draft: gestures start from what is settled. */
export interface Scene {
  readonly plan: Plan
  readonly slab: Slab | null
  readonly photo: Photo | null
  readonly option: Option | null
  readonly slabResult: SlabResult | null
  readonly optionResult: OptionResult | null
  readonly stage: Stage
  readonly view: ViewName
  readonly tool: ToolName
  readonly camera: Camera
  readonly size: Size
  readonly frames: Frames
  readonly selection: Selection | null
  readonly tray: readonly TrayPiece[]
  /** What the next board measures; null until that is said. */
  readonly boardSize: BoardSize | null
  readonly ruleSize: RuleSize | null
  /** The map of where the photo is weak lies over the slab. */
  readonly showsWeak: boolean
  /** Lines that are drawn cling to the edge. */
  readonly followsEdge: boolean
  /** Radius of the pushing tool, CSS px. */
  readonly pushRadiusPx: number
  /** What is proposed on this photo. Layers read the store instead: it changes with every move of the pointer. */
  readonly tracing: TracingState
  readonly newId: () => string
}

/** What a tool answers. Only `state` is always there. */
export interface ToolStep<State> {
  readonly state: State
  /** Answer to a press: the tool takes the gesture. Otherwise it pans the view. */
  readonly taken?: boolean
  /** The plan shows as if this command had run. Null or left out: no draft. */
  readonly draft?: ToolCommand | null
  /** Runs as one undo step. */
  readonly command?: ToolCommand
  /** What is asked of the tracing worker's desk, in turn. */
  readonly trace?: readonly TraceOrder[]
  readonly select?: Selection | null
  /** The tool has done its work: what it made is then moved with the hand. */
  readonly layDown?: boolean
  readonly say?: Say
  /** Answer to a key: the tool had no use for it. */
  readonly unused?: boolean
}

/** Where a point is about to be set or moved to: the loupe looks there. */
export interface Aim {
  readonly world: Point
  /** Where the finger or pointer is, screen px. */
  readonly pointerAt: Point
  readonly pointer: PointerKind
}

/** A tool: a pure state machine. Its state never outlives a change of slab. */
export interface Tool<State> {
  readonly idle: State
  readonly step: (state: State, event: ToolEvent, scene: Scene) => ToolStep<State>
  readonly aim: (state: State) => Aim | null
  /** Points set so far in an unfinished trace or board or datum, photo px. */
  readonly unfinished: (state: State) => readonly PxPoint[]
  /** A stroke that is being drawn, in the photo. */
  readonly rubber?: (state: State) => readonly [Point, Point] | null
  /** Middle of the round tool while it works, in the photo. */
  readonly round?: (state: State) => Point | null
}
