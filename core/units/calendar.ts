const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]

/** Whether a day is in the Gregorian calendar; month and day from 1. @source RFC-3339 5.7 */
export function inCalendar(year: number, month: number, day: number): boolean {
  const leap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0)
  const days = month === 2 && leap ? 29 : DAYS[month - 1] ?? 0
  return day >= 1 && day <= days
}
