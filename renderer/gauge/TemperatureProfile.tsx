import type { ReactNode } from 'react'
import type { PictureLevels } from './picture-levels.ts'
import { yOf } from './PictureShell.tsx'

/** How far the warmest spot stands to the right of the coldest. */
const WIDTH = 20

/** The temperatures at their heights, joined by a line: the warmer, the further to the right. */
export function TemperatureProfile({ spots, x, hollow }: { readonly spots: PictureLevels['spots']; readonly x: number; readonly hollow: boolean }): ReactNode {
  const placed = spots.map((spot) => ({ ...spot, x: x + spot.warmth * WIDTH, y: yOf(spot.at) }))
  return (
    <g>
      {placed.length > 1 && <polyline points={placed.map((spot) => `${spot.x},${spot.y}`).join(' ')} className="picture-profile" />}
      {placed.map((spot, i) => (
        <g key={i}>
          <circle cx={spot.x} cy={spot.y} r="3" className={hollow ? 'picture-spot picture-hollow' : 'picture-spot'} />
          <text x={spot.x + 6} y={spot.y + 4} className="picture-small">{spot.label}</text>
        </g>
      ))}
    </g>
  )
}
