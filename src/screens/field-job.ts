/** Texts that are asked for about the whole job: what went in, what else is to be seen to. */
import { record, stay } from './moves.ts';
import type { JobAsks, State, Updated } from './state.ts';

export function doneOfJob(below: State, asks: JobAsks, text: string): Updated {
  if (text === '') return stay(below);
  const place = asks.piece === null ? {} : { piece: asks.piece };
  switch (asks.ask) {
    case 'inside':
    case 'cleared':
      return record(below, { do: asks.ask, ...place, what: text });
    case 'item':
      return record(below, { do: 'gate', moment: asks.moment, ...place, how: 'added', item: text });
  }
}

export function questionOfJob(state: State, asks: JobAsks): string[] {
  const piece = asks.piece === null ? null : state.open?.job.pieces.get(asks.piece)?.spec.name;
  const where = piece ? ` behind: ${piece}` : '';
  switch (asks.ask) {
    case 'inside':
      return [
        `What goes in${where}?`,
        '2 rags, 1 plug. It is asked for before anything closes over it.',
      ];
    case 'cleared':
      return [`What came out again${where}?`, 'As it stands, or fewer: 1 rag.'];
    case 'item':
      return [
        'What else is to be seen to here?',
        'Washer under the clip. It is asked for at this gate from now on.',
      ];
  }
}
