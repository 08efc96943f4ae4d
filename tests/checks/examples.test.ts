import { describe, expect, test } from 'vitest';
import { analyse } from '../../shared/analyse.ts';
import { checks } from '../../shared/checks/index.ts';
import { folder } from '../support/folder.ts';
import { marked } from '../support/marked.ts';

describe('every check has its fault once, at its place, and nothing else', () => {
  const rows = checks.flatMap((check) => check.bad.map((text, index) => ({ code: check.code, index, text })));
  test.each(rows)('$code, bad example $index', ({ code, text }) => {
    const { plain, spans } = marked(text);
    const found = analyse(plain, folder()).problems.map((problem) => ({ code: problem.code, at: plain.slice(problem.span.from, problem.span.to), from: problem.span.from }));
    expect(found).toEqual([{ code, at: plain.slice(spans[0]!.from, spans[0]!.to), from: spans[0]!.from }]);
  });
});

describe('the sound twin has no problem at all', () => {
  const rows = checks.flatMap((check) => check.good.map((text, index) => ({ code: check.code, index, text })));
  test.each(rows)('$code, good example $index', ({ text }) => {
    expect(analyse(text, folder()).problems.map((problem) => `${problem.code}: ${problem.message}`)).toEqual([]);
  });
});

test('codes are kebab-case and stand once each, and every check has both kinds of example', () => {
  const codes = checks.map((check) => check.code);
  expect(new Set(codes).size).toBe(codes.length);
  expect(codes.filter((code) => !/^[a-z]+(-[a-z]+)*$/.test(code))).toEqual([]);
  expect(checks.filter((check) => check.bad.length === 0 || check.good.length === 0).map((check) => check.code)).toEqual([]);
});
