import { expect, test } from 'vitest';
import { pageHtml } from '../../client/webview/html.ts';

const html = pageHtml({ script: 'https://files/page.js', style: 'https://files/page.css', source: 'https://files', nonce: 'abc' });

test('the policy allows the page its own files and nothing else', () => {
  const policy = /Content-Security-Policy" content="([^"]*)"/.exec(html)?.[1];
  expect(policy).toBe("default-src 'none'; style-src https://files; font-src https://files; script-src 'nonce-abc'");
});

test.each([/<style\b/, /\sstyle=/, /\son[a-z]+=/, /<script(?![^>]*nonce="abc" src=)/, /https?:\/\/(?!files|www\.w3\.org\/2000\/svg)/])('has no %s', (inline) => {
  expect(html).not.toMatch(inline);
});

test('labels name their controls and ids are used once', () => {
  const ids = [...html.matchAll(/\sid="([^"]+)"/g)].map((found) => found[1]);
  expect(new Set(ids).size).toBe(ids.length);
  for (const [, wanted] of html.matchAll(/\s(?:for|aria-labelledby|aria-describedby)="([^"]+)"/g)) expect(ids).toContain(wanted);
});
