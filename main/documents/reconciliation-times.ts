/** An instant by the clock of a zone, to the minute: `2026-09-01 06:08`. A zone that this system does not know gives UTC. */
export function shortTime(at: string, zone: string): string {
  const known = Intl.supportedValuesOf('timeZone').includes(zone)
  const parts = new Intl.DateTimeFormat('en-GB', {
    timeZone: known ? zone : 'UTC', year: 'numeric', month: '2-digit', day: '2-digit', hour: '2-digit', minute: '2-digit', hourCycle: 'h23',
  }).formatToParts(new Date(at))
  const part = (type: Intl.DateTimeFormatPartTypes): string => parts.find((one) => one.type === type)?.value ?? ''
  return `${part('year')}-${part('month')}-${part('day')} ${part('hour')}:${part('minute')}`
}
