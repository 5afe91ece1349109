import type { ReactNode } from 'react'
import type { PictureLevels } from './picture-levels.ts'
import { yOf } from './PictureShell.tsx'

/** How far the warmest spot stands to the right of the coldest. */
const WIDTH = 20

interface TemperatureProfileProps {
  readonly spots: PictureLevels['spots']
  readonly x: number
  readonly hollow: boolean
  /** In a round tank: its scale, and the side on which figures stand, where they may reach over the wall. */
  readonly round?: { readonly heightOf: (share: number) => number; readonly labels: 'left' | 'right' }
}

/** The temperatures at their heights, joined by a line: the warmer, the further to the right. */
export function TemperatureProfile({ spots, x, hollow, round }: TemperatureProfileProps): ReactNode {
  const heightOf = round?.heightOf ?? yOf
  const left = round?.labels === 'left'
  const placed = spots.map((spot) => ({ ...spot, x: x + spot.warmth * WIDTH, y: heightOf(spot.at) }))
  return (
    <g>
      {placed.length > 1 && <polyline points={placed.map((spot) => `${spot.x},${spot.y}`).join(' ')} className="picture-profile" />}
      {placed.map((spot, i) => (
        <g key={i}>
          <circle cx={spot.x} cy={spot.y} r="3" className={hollow ? 'picture-spot picture-hollow' : 'picture-spot'} />
          <text x={left ? spot.x - 6 : spot.x + 6} y={spot.y + 4} textAnchor={left ? 'end' : 'start'} className={round ? 'picture-small picture-over' : 'picture-small'}>{spot.label}</text>
        </g>
      ))}
    </g>
  )
}
