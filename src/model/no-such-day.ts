/** Days that no calendar has, out of a text: the 30th of February. */
import { MONTHS, readDay } from './time.ts';

const BEGINS = MONTHS.map((month) => month.slice(0, 3).toLowerCase());
const NAMES =
  '\\b(jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)\\b\\.?';
const FORMS: readonly { form: RegExp; day: number; month: number; year: number }[] = [
  { form: /(?<![\d-])(\d{4})-(\d\d)-(\d\d)(?![\d-])/, year: 1, month: 2, day: 3 },
  {
    form: new RegExp(
      `(?<![\\d.,])(\\d{1,2})(?:st|nd|rd|th|\\.)? ?${NAMES}(?: (\\d{4}))?(?![\\w])`,
      'i',
    ),
    day: 1,
    month: 2,
    year: 3,
  },
  {
    form: new RegExp(`${NAMES} (\\d{1,2})(?:st|nd|rd|th)?(?:,? (\\d{4}))?(?![\\w.,])`, 'i'),
    month: 1,
    day: 2,
    year: 3,
  },
  { form: /(?<![\d.])(\d{1,2})\. ?(\d{1,2})\. ?(\d{4})(?![\d.])/, day: 1, month: 2, year: 3 },
  { form: /^\s*(\d{1,2})\.(\d{1,2})\.?\s*$/, day: 1, month: 2, year: 9 },
];
/** A year that has the 29th of February. */
const LEAP = '2024';

/** `30 February` and `February has no 30th.`; null where the text names no such day. */
export function noSuchDay(text: string): { value: string; say: string } | null {
  for (const { form, ...at } of FORMS) {
    const found = form.exec(text);
    if (!found) continue;
    const month = monthOf(found[at.month] ?? '');
    const day = Number(found[at.day]);
    const year = found[at.year];
    const name = MONTHS[month - 1];
    if (name === undefined) continue;
    if (readDay(`${year ?? LEAP}-${two(month)}-${two(day)}`, 0)) continue;
    const which = year === undefined ? name : `${name} ${year}`;
    return { value: found[0].trim(), say: `${which} has no ${ordinal(day)}.` };
  }
  return null;
}

function monthOf(said: string): number {
  const number = Number(said);
  return Number.isNaN(number) ? BEGINS.indexOf(said.slice(0, 3).toLowerCase()) + 1 : number;
}

const two = (n: number): string => `${n}`.padStart(2, '0');

function ordinal(n: number): string {
  const teen = n % 100 > 10 && n % 100 < 14;
  return `${n}${teen ? 'th' : (['th', 'st', 'nd', 'rd'][n % 10] ?? 'th')}`;
}
