import { Refusal } from '../io.ts';

/**
 * The `K/N`-th part of some files: of their names in order every N-th from the K-th on. The parts of one N are disjoint and
 * together all files, and do not hang on the order in which a shell or a disk names them.
 */
export function partOf(names: readonly string[], written: string): readonly string[] {
  const [, k, n] = /^(\d{1,4})\/(\d{1,4})$/.exec(written) ?? [];
  const [part, parts] = [Number(k), Number(n)];
  if (!(part >= 1 && part <= parts)) throw new Refusal(`--shard cannot be ${written}: it takes the part and the number of parts, such as 2/5.`);
  return [...names].sort().filter((_, index) => index % parts === part - 1);
}
