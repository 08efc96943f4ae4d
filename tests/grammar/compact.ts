/** A tree without spans, margins and what is absent: words and texts as strings, numbers as numbers or `3 yd`. */
export function compact(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(compact);
  if (typeof value !== 'object' || value === null) return value;
  const fields = value as Record<string, unknown>;
  if ('text' in fields && !('kind' in fields)) return fields['text'];
  if (fields['kind'] === 'number') {
    const unit = fields['unit'] as { text: string } | null;
    return unit === null ? fields['value'] : `${String(fields['value'])} ${unit.text}`;
  }
  if (fields['kind'] === 'name' && fields['next'] !== true) return compact(fields['name']);
  const kept = Object.entries(fields).filter(([key, held]) =>
    !['span', 'margin', 'verbSpan'].includes(key) && held !== null && !(Array.isArray(held) && held.length === 0 && key !== 'lines'));
  return Object.fromEntries(kept.map(([key, held]) => [key, compact(held)]));
}
