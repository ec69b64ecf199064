/** Days, dates and times as the plan says them. */
export { daysBetween, sayDate, sayDays, sayTime } from '../../plan/days.ts';
