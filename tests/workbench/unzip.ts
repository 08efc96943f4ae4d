import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { inflateRawSync } from 'node:zlib';

/** Unpacks an archive as `vsce` writes it: stored or deflated, not encrypted, below 4 GB. Offsets as in APPNOTE.TXT, 4.3. */
export function unzip(archive: string, folder: string): void {
  const bytes = readFileSync(archive);
  const end = bytes.lastIndexOf('PK\u0005\u0006', undefined, 'latin1');
  let at = bytes.readUInt32LE(end + 16);
  for (let left = bytes.readUInt16LE(end + 10); left > 0; left -= 1) {
    const [method, size] = [bytes.readUInt16LE(at + 10), bytes.readUInt32LE(at + 20)];
    const [name, extra, comment] = [bytes.readUInt16LE(at + 28), bytes.readUInt16LE(at + 30), bytes.readUInt16LE(at + 32)];
    const local = bytes.readUInt32LE(at + 42);
    const start = local + 30 + bytes.readUInt16LE(local + 26) + bytes.readUInt16LE(local + 28);
    const target = join(folder, bytes.toString('utf8', at + 46, at + 46 + name));
    const data = bytes.subarray(start, start + size);
    if (!target.endsWith('/')) {
      mkdirSync(dirname(target), { recursive: true });
      writeFileSync(target, method === 8 ? inflateRawSync(data) : data);
    }
    at += 46 + name + extra + comment;
  }
}
