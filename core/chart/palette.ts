/** The colours of paper, ink and the few meanings that have one. */
export const PALETTE = {
  paper: '#f6f4ee', ink: '#1c2733', muted: '#5d6670', rule: '#d9d4c7',
  oxide: '#9a3b1f', ochre: '#b98a2f', water: '#2f6f8f', gain: '#2c6e63', loss: '#9a3b1f',
  /** Inside the limit: a shade of the paper. */
  band: '#e6e1d3',
} as const

/** What tells the lines of several tanks apart: colour and dash together, so that a grey print still reads. */
export const LINE_STYLES = [
  { color: PALETTE.oxide, type: 'solid' }, { color: PALETTE.water, type: 'solid' }, { color: PALETTE.ochre, type: 'solid' }, { color: PALETTE.gain, type: 'solid' },
  { color: PALETTE.ink, type: 'dashed' }, { color: PALETTE.water, type: 'dashed' }, { color: PALETTE.oxide, type: 'dashed' }, { color: PALETTE.gain, type: 'dashed' },
  { color: PALETTE.ink, type: 'dotted' }, { color: PALETTE.ochre, type: 'dotted' }, { color: PALETTE.water, type: 'dotted' }, { color: PALETTE.oxide, type: 'dotted' },
] as const

/** Size and colour of every word; the face is set once for the whole picture. */
export const TEXT = { fontSize: 11, color: PALETTE.ink } as const

/** What every picture starts from: it stands still, on whatever paper it is laid, in the face that documents embed. */
export const GROUND = { animation: false, backgroundColor: 'transparent', textStyle: { fontFamily: 'Roboto', ...TEXT } } as const

const rule = { lineStyle: { color: PALETTE.rule, width: 1 } } as const

/** Axes as hairlines on paper; figures on them without thousands marks, which a reader may take for a decimal mark. */
export const AXIS = {
  axisLine: { show: true, lineStyle: { color: PALETTE.ink, width: 1 }, onZero: false }, axisTick: { show: true }, splitLine: { show: true, ...rule },
  axisLabel: { ...TEXT }, nameTextStyle: { ...TEXT, color: PALETTE.muted },
} as const

/** An axis of figures, named along its middle so that the name never meets the legend. */
export const FIGURE_AXIS = { type: 'value', nameLocation: 'middle', nameGap: 46, ...AXIS, axisLabel: { ...TEXT, formatter: (value: number) => String(value) } } as const

export const TOOLTIP = { transitionDuration: 0, borderRadius: 0, backgroundColor: PALETTE.paper, borderColor: PALETTE.ink, textStyle: TEXT } as const
