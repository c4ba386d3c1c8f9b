/**
 * Spearman's rank correlation of two columns of equal length: how surely one rises with the other, from -1 to 1, whatever
 * the shape of the curve. Equal values share the mean of their ranks. NaN when a column says nothing (all values equal).
 *
 * @throws RangeError when the columns differ in length
 */
export function rankCorrelation(a: ArrayLike<number>, b: ArrayLike<number>): number {
  if (a.length !== b.length) throw new RangeError(`Columns of ${a.length} and ${b.length} cannot be compared.`);
  const left = ranks(a);
  const right = ranks(b);
  const mean = (a.length + 1) / 2;
  let both = 0;
  let own = 0;
  let others = 0;
  for (let k = 0; k < left.length; k++) {
    const x = left[k] - mean;
    const y = right[k] - mean;
    both += x * y;
    own += x * x;
    others += y * y;
  }
  return both / Math.sqrt(own * others);
}

function ranks(values: ArrayLike<number>): Float64Array {
  const order = Array.from(values, (_, k) => k).sort((a, b) => values[a] - values[b]);
  const out = new Float64Array(values.length);
  for (let first = 0; first < order.length; ) {
    let last = first;
    while (last + 1 < order.length && values[order[last + 1]] === values[order[first]]) last++;
    for (let k = first; k <= last; k++) out[order[k]] = 1 + (first + last) / 2;
    first = last + 1;
  }
  return out;
}
