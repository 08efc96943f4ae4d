/** Names of files made from words: legal on Windows, macOS and Linux, the same on all of them, and still to be read. */

/** Of a file called like a drill: `fünf-gegen-zwei`; `otherwise` for a title without a letter or a digit. */
export function fileNameFor(title: string, otherwise: string): string {
  const words = title.normalize('NFC').toLowerCase().normalize('NFC').replace(/[^\p{L}\p{M}\p{N}]+/gu, '-');
  return allowed(within(words, 80).replace(/^-+|-+$/g, '')) || otherwise;
}

/** Of a file called like another: as that is called, without what some system does not allow. */
export function legalFileName(name: string): string {
  // Control characters and those that Windows keeps for itself.
  const signs = name.normalize('NFC').replace(/[\p{Cc}<>:"/\\|?*]/gu, '-');
  return allowed(within(signs, 180).replace(/[. ]+$/, '')) || '-';
}

/** Devices of Windows, whatever ending follows. */
const devices = /^(?:con|prn|aux|nul|conin\$|conout\$|(?:com|lpt)[0-9¹²³])(?=\.|$)/i;

function allowed(name: string): string {
  return name.replace(devices, '$&_');
}

const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** Cut to so many bytes of UTF-8, between letters: 255 is the most that any of the systems takes, and an ending follows. */
function within(name: string, most: number): string {
  let bytes = 0;
  let kept = '';
  for (const { segment } of graphemes.segment(name)) {
    bytes += bytesOf(segment);
    if (bytes > most) break;
    kept += segment;
  }
  return kept;
}

function bytesOf(text: string): number {
  return [...text].reduce((sum, char) => {
    const code = char.codePointAt(0)!;
    return sum + (code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x1_0000 ? 3 : 4);
  }, 0);
}
