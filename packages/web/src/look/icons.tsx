/** The signs of the page, drawn for it on a grid of 24. Each stands beside words or has its own name for a screen reader. */
const PATHS = {
  back: 'M15 4 7 12l8 8',
  camera: 'M3 8h4l2-3h6l2 3h4v11H3zM12 10a3.5 3.5 0 1 0 0 7 3.5 3.5 0 0 0 0-7z',
  folder: 'M3 6h7l2 3h9v10H3z',
  /** A punch mark on a hole. */
  mark: 'M12 2v5M12 17v5M2 12h5M17 12h5M12 8a4 4 0 1 0 0 8 4 4 0 0 0 0-8z',
  /** Three bolts by length. */
  tray: 'M3 4h4M5 4v8M10 4h4M12 4v12M17 4h4M19 4v16',
  /** Jaws on a step. */
  measure: 'M3 5h18M7 5v9M17 5v5M7 14h10v-4M12 14v5M9 19h6',
  swap: 'M4 8h14M14 4l4 4-4 4M20 16H6M10 12l-4 4 4 4',
  undo: 'M8 5 4 9l4 4M4 9h10a5 5 0 0 1 0 10h-4',
  tick: 'M4 13l5 5L20 6',
  cross: 'M6 6l12 12M18 6 6 18',
  plus: 'M12 4v16M4 12h16',
  minus: 'M4 12h16',
  question: 'M8.5 9a3.5 3.5 0 1 1 5 3.2c-1 .5-1.5 1.2-1.5 2.3M12 18.5v.5',
  warning: 'M12 3 22 20H2zM12 9v5M12 16.8v.4',
  sent: 'M4 12l5 5L20 6',
  waiting: 'M7 3h10M7 21h10M8 3c0 5 8 5 8 9s-8 4-8 9M16 3c0 5-8 5-8 9s8 4 8 9',
  off: 'M4 4l16 16M9 17.5a4.5 4.5 0 0 1 6 0M5.5 13.5a10 10 0 0 1 4-2.4M18.5 13.5a10 10 0 0 0-3-2M12 20.5v.2',
  gear: 'M12 8.5a3.5 3.5 0 1 0 0 7 3.5 3.5 0 0 0 0-7zM12 2.5v3M12 18.5v3M2.5 12h3M18.5 12h3M5.3 5.3l2.1 2.1M16.6 16.6l2.1 2.1M18.7 5.3l-2.1 2.1M7.4 16.6l-2.1 2.1',
  list: 'M8 6h12M8 12h12M8 18h12M4 6h.5M4 12h.5M4 18h.5',
  photo: 'M3 5h18v14H3zM3 16l5-5 4 4 3-3 6 6M15.5 8.5h.5',
  scale: 'M3 9h18v6H3zM7 9v3M11 9v2M15 9v3M19 9v2',
  move: 'M12 3v18M3 12h18M9 6l3-3 3 3M9 18l3 3 3-3M6 9l-3 3 3 3M18 9l3 3-3 3',
  turns: 'M19 12a7 7 0 1 1-3-5.7M16 2v5h-5',
  deeper: 'M4 5h6v14h4V9h6M17 6l3 3-3 3',
  part: 'M4 7l8-4 8 4v10l-8 4-8-4zM4 7l8 4 8-4M12 11v10',
  book: 'M4 4h7a1 1 0 0 1 1 1v15a2 2 0 0 0-2-2H4zM20 4h-7a1 1 0 0 0-1 1v15a2 2 0 0 1 2-2h6z',
  search: 'M10.5 4a6.5 6.5 0 1 0 0 13 6.5 6.5 0 0 0 0-13zM15.5 15.5 21 21',
  more: 'M5 12h.5M12 12h.5M19 12h.5',
  whole: 'M4 9V4h5M20 9V4h-5M4 15v5h5M20 15v5h-5',
  erase: 'M9 5h11v14H9L3 12zM11.5 9.5l5 5M16.5 9.5l-5 5',
  change: 'M7 9l5-5 5 5M7 15l5 5 5-5',
  /** Three bolts and the way from one to the next. */
  order:
    'M5 15a2.5 2.5 0 1 0 0 5 2.5 2.5 0 0 0 0-5zM19 15a2.5 2.5 0 1 0 0 5 2.5 2.5 0 0 0 0-5zM12 3a2.5 2.5 0 1 0 0 5 2.5 2.5 0 0 0 0-5zM6.5 14.5 10 8.5M7.5 17.5h6.5M12.5 15.5l2 2-2 2',
  forth: 'M9 4l8 8-8 8',
  /** A plate with a corner that is drawn. */
  outline: 'M4 17V7l7-3 9 4v9l-8 3zM4 17l8 3M18 6l4 4M22 6l-4 4',
} as const

export type IconName = keyof typeof PATHS

export function Icon({ name, size = 24 }: { name: IconName; size?: number }) {
  return (
    <svg
      class="icon"
      viewBox="0 0 24 24"
      width={size}
      height={size}
      fill="none"
      stroke="currentColor"
      stroke-width="2"
      stroke-linecap="round"
      stroke-linejoin="round"
      aria-hidden="true"
    >
      <path d={PATHS[name]} />
    </svg>
  )
}
