/** Texts that are meant to hurt: huge, deep, long, crowded. Each with the code of its first problem, or null. */
export const hostile: readonly { readonly what: string; readonly code: string | null; readonly text: () => string }[] = [
  { what: 'a file of 2 MB', code: 'syntax', text: () => drill(`  sequence {\n${'    A passes to B\n    B passes to A\n'.repeat(55_000)}  }`) },
  { what: '10,000 nested brackets', code: 'syntax', text: () => drill(`  cone C at (${'('.repeat(10_000)}1${')'.repeat(10_000)}, 2)`) },
  { what: '10,000 nested braces', code: 'syntax', text: () => '{'.repeat(10_000) },
  { what: '10,000 nested drills', code: 'syntax', text: () => 'drill "X" {\n'.repeat(10_000) },
  { what: '10,000 minus signs', code: 'syntax', text: () => drill(`  let a = ${'- '.repeat(10_000)}1`) },
  { what: 'a sum of 50,000 terms', code: 'impossible-value', text: () => drill(`  cone C at (${Array(50_000).fill('1').join(' + ')}, 2)`) },
  { what: 'a place 5,000 deep', code: 'syntax', text: () => drill(`  cone C at ${'0 above '.repeat(5_000)}A`) },
  { what: 'a let chain 5,000 long', code: null, text: () => chain((i) => i - 1, 4_999) },
  { what: 'a let chain 5,000 long, backwards', code: null, text: () => chain((i) => i + 1, 0) },
  { what: '5,000 stations, each above the last', code: 'outside-area', text: () => drill(Array.from({ length: 5_000 }, (_, i) => `  station S${i} at 1 above ${i === 0 ? 'A' : `S${i - 1}`}`).join('\n')) },
  { what: 'a zone with 10,000 corners', code: 'impossible-value', text: () => drill(`  zone Z polygon ${ring(10_000)}`) },
  { what: '1,000 zones', code: 'zone-outside-area', text: () => drill(Array.from({ length: 1_000 }, (_, i) => `  zone Z${i} 2 x 2 at (${(i % 30) / 2}, ${Math.floor(i / 30) / 2})`).join('\n')) },
  { what: '10,000 cones', code: 'same-spot', text: () => drill(Array.from({ length: 10_000 }, (_, i) => `  cone at (${(i % 150) / 8}, ${Math.floor(i / 150) / 8})`).join('\n')) },
  { what: '5,000 beats', code: null, text: () => drill(`  sequence {\n${'    A passes to B\n    B passes to A\n'.repeat(2_500)}  }`) },
];

function drill(body: string): string {
  return `drill "X" {\n  area 20 x 20\n  station A at (2, 2)\n  station B at (12, 2)\n  ball at A\n${body}\n}\n`;
}

function chain(before: (i: number) => number, last: number): string {
  const lets = Array.from({ length: 5_000 }, (_, i) => `  let a${i} = ${before(i) < 0 || before(i) > 4_999 ? '1' : `a${before(i)} + 0`}`);
  return drill(`${lets.join('\n')}\n  cone C at (a${last}, 1)`);
}

function ring(corners: number): string {
  return Array.from({ length: corners }, (_, i) => {
    const angle = (2 * Math.PI * i) / corners;
    return `(${(10 + 5 * Math.cos(angle)).toFixed(4)}, ${(10 + 5 * Math.sin(angle)).toFixed(4)})`;
  }).join(' ');
}
