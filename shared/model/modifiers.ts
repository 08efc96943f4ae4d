/** How an action is done: first time, lofted, around a pole, after half a second. */
import type { Expression, Modifier } from '../../grammar/tree.ts';
import { writtenTwice } from '../checks/duplicate-name.ts';
import { negative } from '../checks/impossible-value.ts';
import { formatNumber } from '../units.ts';
import type { Action } from './drill.ts';
import { countOf, timeOf } from './expressions.ts';
import { pointOf } from './places.ts';
import type { Scope } from './scope.ts';
import { goneAround } from './subjects.ts';

export type Manner = Pick<
  Action,
  'about' | 'firstTime' | 'touches' | 'touchesSpan' | 'weight' | 'lofted' | 'inStride' | 'via' | 'gait' | 'after' | 'length'
>;

/** `about` is what the verb itself goes around or at. Null when a modifier cannot be worked out. */
export function modifiersOf(modifiers: readonly Modifier[], about: Action['about'], scope: Scope): Manner | null {
  let manner: Manner | null = {
    about, firstTime: false, touches: null, touchesSpan: null, weight: null, lofted: false, inStride: false,
    via: [], gait: null, after: 0, length: null,
  };
  for (const modifier of modifiers) {
    const more: Partial<Manner> | null = manner && changeBy(modifier, manner, scope);
    manner = manner && more && { ...manner, ...more };
  }
  return manner;
}

function changeBy(modifier: Modifier, manner: Manner, scope: Scope): Partial<Manner> | null {
  switch (modifier.kind) {
    case 'first time':
      return { firstTime: true };
    case 'soft':
    case 'firm':
    case 'driven':
      return { weight: modifier.kind };
    case 'lofted':
      return { lofted: true };
    case 'in stride':
      return { inStride: true };
    case 'touches': {
      const touches = countOf(modifier.count, scope, { what: 'The number of touches', most: 99 });
      return touches === null ? null : { touches, touchesSpan: modifier.span };
    }
    case 'via': {
      const point = pointOf(modifier.at, scope);
      return point && { via: [...manner.via, point] };
    }
    case 'around': {
      if (manner.about) {
        scope.report(writtenTwice(modifier.span, 'around', manner.about.span));
        return null;
      }
      const about = goneAround(modifier.about, scope);
      return about && { about };
    }
    case 'gait':
      return { gait: modifier.gait };
    case 'after': {
      const after = noLessThanNone(modifier.delay, 'The delay', scope);
      return after === null ? null : { after };
    }
    case 'for': {
      const length = noLessThanNone(modifier.length, 'The wait', scope);
      return length === null ? null : { length };
    }
  }
}

function noLessThanNone(expression: Expression, what: string, scope: Scope): number | null {
  const seconds = timeOf(expression, scope);
  if (seconds === null || seconds >= 0) return seconds;
  scope.report(negative(expression.span, what, `${formatNumber(seconds, 2)} s`));
  return null;
}
