/** Which names a piece of text mentions, so that it can be worked out after them. */
import type { Expression, Place, Size, ZoneShape } from '../../grammar/tree.ts';

export function inExpression(expression: Expression): string[] {
  switch (expression.kind) {
    case 'number':
      return [];
    case 'name':
      return [expression.name.text];
    case 'measure':
      return [expression.of.text];
    case 'group':
      return inExpression(expression.inner);
    case 'negative':
      return inExpression(expression.of);
    case 'sum':
      return expression.terms.flatMap((term) => inExpression(term.of));
    case 'product':
      return expression.factors.flatMap((factor) => inExpression(factor.of));
  }
}

export function inSize(size: Size): string[] {
  return [...inExpression(size.width), ...inExpression(size.length)];
}

export function inPlace(place: Place): string[] {
  switch (place.kind) {
    case 'at':
      return [...inExpression(place.x), ...inExpression(place.y)];
    case 'name':
      return [place.name.text];
    case 'anchor':
      return [place.of.text];
    case 'offset':
      return [...inPlace(place.from), ...inExpression(place.dx), ...inExpression(place.dy)];
    case 'beside':
      return [...inExpression(place.distance), ...inPlace(place.of)];
    case 'between':
      return [...inPlace(place.a), ...inPlace(place.b)];
    case 'along':
      return [...inExpression(place.fraction), ...inPlace(place.start), ...inPlace(place.end)];
    case 'mirror':
      return ['area', ...inPlace(place.of)];
  }
}

export function inShape(shape: ZoneShape): string[] {
  switch (shape.kind) {
    case 'box':
      return [...inSize(shape.size), ...inPlace(shape.at)];
    case 'tucked':
      return [...inSize(shape.size), shape.of.text];
    case 'corners':
      return [...inPlace(shape.a), ...inPlace(shape.b)];
    case 'circle':
      return [...inExpression(shape.radius), ...inPlace(shape.at)];
    case 'polygon':
      return shape.points.flatMap(inPlace);
  }
}
