/** The JSON Schema of a job file (draft 2020-12), made from its shape; in the built program it stands here ready. */
import * as z from 'zod';
import { VERBS, type Verb } from '../../model/types.ts';
import { PLACES, verbRow } from '../../model/verbs/verbs.ts';
import { ENTRY, fileShape } from './shape.ts';

export function jsonSchema(): object {
  const { $schema, $defs, ...rest } = z.toJSONSchema(fileShape(), {
    target: 'draft-2020-12',
    override: ({ zodSchema, jsonSchema: made }) => {
      if (z.globalRegistry.get(zodSchema)?.id === ENTRY) Object.assign(made, ENTRY_RULES);
    },
  });
  return {
    $schema,
    title: 'putback job file',
    description: 'One repair of one machine: what is, and a diary of what happened.',
    ...rest,
    $defs: { ...$defs, ...ABOUT },
  };
}

type Rule = Record<string, unknown>;

/** `about-piece-maybe-hole`, `about-task-or-buy`: what a verb can be about; many can be about the same. */
function aboutName(verb: Verb): string {
  const say = (place: string) => (place.endsWith('!') ? place.slice(0, -1) : `maybe-${place}`);
  const sets = verbRow(verb).about.map((places) => places.map(say).join('-') || 'nothing');
  return `about-${sets.join('-or-')}`;
}

/** The places of an entry are those of one set; of these, the ones with `!` are there. */
function aboutRule(verb: Verb): Rule {
  const sets = verbRow(verb).about.map((places): Rule => {
    const named = places.map((place) => place.replace('!', ''));
    return {
      type: 'object',
      required: named.filter((place) => (places as readonly string[]).includes(`${place}!`)),
      properties: Object.fromEntries(PLACES.map((place) => [place, named.includes(place)])),
    };
  });
  return { anyOf: sets };
}

const ABOUT = Object.fromEntries(VERBS.map((verb) => [aboutName(verb), aboutRule(verb)]));

/** An entry has exactly one verb, and stands at one of the places that this verb may have. */
const ENTRY_RULES: Rule = {
  oneOf: VERBS.map((verb) => ({ required: [verb], properties: { [verb]: true } })),
  dependentSchemas: Object.fromEntries(
    VERBS.map((verb) => [verb, { $ref: `#/$defs/${aboutName(verb)}` }]),
  ),
};
