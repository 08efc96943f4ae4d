/**
 * The assignment of rows to columns with the least sum of costs: for every row its column. Each column is used once; there are at least as many
 * columns as rows. The Hungarian method with potentials (Kuhn 1955, Munkres 1957), in the order of rows² × columns.
 */
export function cheapest(costs: readonly (readonly number[])[]): readonly number[] {
  const rows = costs.length;
  const columns = costs[0]?.length ?? 0;
  // Row and column 0 are no row and no column: a row comes in there, and its way through the others is searched from there.
  const ofRow = new Float64Array(rows + 1);
  const ofColumn = new Float64Array(columns + 1);
  const rowOf = new Int32Array(columns + 1);
  const before = new Int32Array(columns + 1);
  for (let row = 1; row <= rows; row += 1) {
    rowOf[0] = row;
    const least = new Float64Array(columns + 1).fill(Infinity);
    const seen = new Uint8Array(columns + 1);
    let column = 0;
    do {
      seen[column] = 1;
      const from = rowOf[column]!;
      let step = Infinity;
      let next = 0;
      for (let other = 1; other <= columns; other += 1) {
        if (seen[other]) continue;
        const reduced = costs[from - 1]![other - 1]! - ofRow[from]! - ofColumn[other]!;
        if (reduced < least[other]!) {
          least[other] = reduced;
          before[other] = column;
        }
        if (least[other]! < step) {
          step = least[other]!;
          next = other;
        }
      }
      for (let other = 0; other <= columns; other += 1) {
        if (seen[other]) {
          ofRow[rowOf[other]!]! += step;
          ofColumn[other]! -= step;
        } else least[other]! -= step;
      }
      column = next;
    } while (rowOf[column] !== 0);
    while (column !== 0) {
      const from = before[column]!;
      rowOf[column] = rowOf[from]!;
      column = from;
    }
  }
  const chosen = Array.from({ length: rows }, () => 0);
  for (let column = 1; column <= columns; column += 1) if (rowOf[column]! > 0) chosen[rowOf[column]! - 1] = column - 1;
  return chosen;
}
