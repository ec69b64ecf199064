/**
 * What one line is that somebody types at the bench: `6204 bearing` is to buy, `spring, goggles!` a caution. Only a
 * guess, offered first and said with the answer; the person's word decides.
 */
import { measuredIn } from '../../bolt/read/reading.ts';
import type { Addable } from '../../model/types.ts';

export interface LineIs {
  as: Addable;
  /** The line without the word that only says what it is: `buy 6204 bearing`. */
  text: string;
}

/** `tip: top bolt last` says itself what it is. */
const SAID: Readonly<Record<string, Addable>> = {
  buy: 'buy',
  order: 'buy',
  get: 'buy',
  do: 'do',
  todo: 'do',
  'to do': 'do',
  wait: 'wait',
  adjust: 'adjust',
  test: 'test',
  check: 'check',
  decide: 'decide',
  caution: 'caution',
  careful: 'caution',
  tip: 'tip',
  note: 'note',
};

const DANGER =
  /!\s*$|\b(?:goggles|gloves|never|careful|beware|danger(?:ous)?|mind the|watch (?:the|your)|keep (?:your )?(?:fingers|hands|face|clear|off)|under tension|preloaded|don'?t|do not)\b/i;
const ASKS_TO_DECIDE =
  /^(?:renew|replace|keep|order|change|shall|should|do (?:i|we)|leave|weld|skim|bore|worth)\b.*\?\s*$|\bor\b.*\?\s*$/i;
const WAITS = /^(?:wait|let|leave)\b|\b(?:overnight|over night|to (?:cure|dry|cool|set|soak))\s*$/i;
const ADJUSTS =
  /^(?:adjust|set|tension|take (?:up|out)|take the (?:slack|play)|slacken|re-?gap|balance|synchroni[sz]e|centre|center|align|trim)\b|\b[\d./]*\d turns? (?:out|in|back)\b/i;
const TESTS =
  /^(?:test|check|measure|try|see (?:if|whether)|make sure|look (?:if|whether|for|at))\b/i;
const DOES =
  /^(?:clean|scrape|drain|fill|top up|grease|oil|bleed|flush|blow|wash|degrease|paint|file|deburr|polish|lap|chase|tap|drill|cut|solder|weld|glue|seal|fit|put|take|remove|renew|replace|swap|turn|press|pull|push|tie|mark|photograph|draw|ask|ring|call|tighten|loosen|route|straighten|bend|charge|disconnect|connect|unplug|plug|bring|send|return|rub|wipe|inspect|free|work|sand|prime|sharpen|dress|tidy|label|bag|drive|knock|heat|warm|hammer|support|hold|hang|raise|lower|lift|refit|swap|hone|ream|rinse|dry|count|apply|lubricate|wrap|pack|grind|unscrew|undo|open|close|torque)\b/i;
/** What is a thing as well as work is the thing where its number or size stands behind it: `seal 28x42x7`. */
const THING =
  /^(?:seal|oil|grease|paint|solder|glue|plug|tape|wire|label|file|tap|drill)s? (?=[\w./-]*\d)(?:[\d.]*[a-z][\w./-]*|\d+(?:[x×/-][\d.]+)+|\d{3,})(?!.*\b(?:the|it|them|both|all|every)\b)/i;
/** Units of readings: 0.4 ohm is something measured, while 8 mm may just as well be the size of a part. */
const MEASURED: readonly string[] = [
  'resistance',
  'voltage',
  'current',
  'charge',
  'capacity',
  'frequency',
  'speed of turning',
  'stress',
  'heat',
];
const MEASURES =
  /\b(?:clearance|gap|play|slack|lash|float|run-?out|wear|thickness|sag|height|depth|pressure|compression|voltage|resistance|level|drop|backlash|end ?float|travel)\b/i;
const PARTS =
  /\b(?:bearings?|gaskets?|seals?|o-?rings?|circlips?|washers?|bolts?|screws?|nuts?|studs?|inserts?|filters?|belts?|chains?|sprockets?|plugs?|bulbs?|fuses?|hoses?|clips?|clamps?|pipes?|cables?|springs?|pads?|shoes?|discs?|tyres?|tires?|tubes?|pistons?|rings?|bush(?:es|ings?)?|valves?|jets?|floats?|coils?|batter(?:y|ies)|switch(?:es)?|relays?|sealant|oil|grease|paint|solder|brush(?:es)?|tank|lever|relay|grommets?|pins?|keys?|rivets?|wire|tape|terminals?|connectors?|kit|diaphragms?|needles?)\b/i;
/** `HL-1142 B`, `6204`, `20x35x7`, `M6x25`. */
const NUMBER = /\b(?:[A-Z]{1,4}-?\d{2,}[\w-]*|\d{3,}[\w-]*|\d+x\d+(?:x\d+)?|M\d+(?:x\d)?)/;
const TIPS =
  /\b(?:easier|trick|helps|best|goes? (?:in|on|off) (?:first|last)|first|last|so that)\b/i;
/** Words of somebody who tells what was done or seen: then the line is a note, whatever parts it names. */
const TELLS = /\b(?:was|were|is|are|had|has|looks?|found|seems?|came|broke|runs|makes)\b/i;

export function lineIs(line: string): LineIs {
  const text = line.trim();
  const [, word = '', rest = ''] = /^([a-z]+(?: do)?)\s*:\s*(\S.*)$/i.exec(text) ?? [];
  const said = SAID[word.toLowerCase()];
  if (said && rest !== '') return { as: said, text: rest };
  const [, verb, what = ''] = /^(buy|order|get)\s+(\S.*)$/i.exec(text) ?? [];
  if (verb !== undefined && !text.endsWith('?')) return { as: 'buy', text: what };
  return { as: guess(text), text };
}

function guess(text: string): Addable {
  if (ASKS_TO_DECIDE.test(text)) return 'decide';
  if (text.endsWith('?')) return 'test';
  if (DANGER.test(text)) return 'caution';
  if (ADJUSTS.test(text)) return 'adjust';
  if (TESTS.test(text)) return 'test';
  if (WAITS.test(text)) return 'wait';
  const found = measuredIn(text);
  if (found) {
    const measured = found.of !== null && MEASURED.includes(found.of);
    if (measured || MEASURES.test(found.before)) return 'test';
  }
  if (THING.test(text)) return 'buy';
  // What is to be tightened is no part, whatever it is called.
  if (DOES.test(text) || found?.of === 'torque') return 'do';
  if (TELLS.test(text)) return 'note';
  if (TIPS.test(text)) return 'tip';
  if (PARTS.test(text) || NUMBER.test(text)) return 'buy';
  return found?.isLimit ? 'test' : 'note';
}
