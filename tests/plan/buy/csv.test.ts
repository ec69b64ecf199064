import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buyRows, printCsv, safeCell } from '../../../src/plan/buy/csv.ts';
import { buyList } from '../../../src/plan/buy/list.ts';
import { jobOf, NOW } from '../make.ts';

describe('a cell', () => {
  it.each([
    ['=1+1', "'=1+1"],
    ['-2+3+cmd|x', "'-2+3+cmd|x"],
    ['@x', "'@x"],
    ['\t=1', "'\t=1"],
    ['\r=1', "'\r=1"],
    ['  =1', "'  =1"],
    ['\u00a0=1', "'\u00a0=1"],
    ['\u200b=1', "'\u200b=1"],
    ['＝1+1', "'＝1+1"],
    ['＠x', "'＠x"],
    ['+49 30 1234', "'+49 30 1234"],
    ['-5.00', '-5.00'],
    ['+5', '+5'],
    ['-1,5', '-1,5'],
    ['-1e3', '-1e3'],
    ['14.20', '14.20'],
    ['M6x25', 'M6x25'],
    ['a=b', 'a=b'],
    ['', ''],
  ])('%j is shown as %j', (text, cell) => {
    expect(safeCell(text)).toBe(cell);
  });

  it('never begins as a formula', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const cell = safeCell(text).trimStart();
        expect(/^[=@]/.test(cell)).toBe(false);
        if (/^[+-]/.test(cell)) expect(Number.isNaN(Number(cell.replace(',', '.')))).toBe(false);
      }),
    );
  });
});

/** Reads what RFC 4180 says: quoted cells, doubled quotes, CRLF. */
function parse(csv: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  for (const [, cell = '', end] of csv.matchAll(/"((?:[^"]|"")*)"(,|\r\n)/g)) {
    row.push(cell.replaceAll('""', '"'));
    if (end === ',') continue;
    rows.push(row);
    row = [];
  }
  return rows;
}

describe('a table', () => {
  it('comes back as it was, whatever stands in it', () => {
    const cell = fc.string({ unit: 'binary' });
    const rows = fc.array(fc.array(cell, { minLength: 1, maxLength: 4 }), { maxLength: 4 });
    fc.assert(
      fc.property(rows, (table) => {
        expect(parse(printCsv(table, { raw: true }))).toEqual(table);
        expect(parse(printCsv(table))).toEqual(table.map((row) => row.map(safeCell)));
      }),
    );
  });

  it('of what to buy', () => {
    const text = `pieces: {cover: {}}
buy: {gasket: {what: 'Gasket "dry", left', price: 14.20, from: "=HYPERLINK(1)", for: cover on}}`;
    expect(printCsv(buyRows(buyList(jobOf(text), NOW)))).toBe(
      [
        '"buy","what","count","price","from","for","state","promised","holds","why"',
        '"gasket","Gasket ""dry"", left","","14.20","\'=HYPERLINK(1)","cover on","wanted","","cover on",""',
        '',
      ].join('\r\n'),
    );
  });
});
