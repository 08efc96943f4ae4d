/** Text and attribute values of any content, as XML 1.0 allows it: control signs and halves of pairs become �. */
export function escapeXml(text: string): string {
  return plain.test(text) ? text : text.replace(unsafe, (char) => escapes[char] ?? '\ufffd');
}

const plain = /^[\w ,.:;()+×–-]*$/;
const unsafe = /[&<>"']|[^\t\n\r\P{Cc}]|[\ufffe\uffff]|\p{Cs}/gu;
const escapes: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };
