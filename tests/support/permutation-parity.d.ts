declare module 'permutation-parity' {
  export default function sign(permutation: readonly number[]): 1 | -1 | 0;
}
