import { describe, expect, test } from 'vitest';
import { allCommands } from '../../server/commands/all.ts';
import { folder, halfturn, sound } from './halfturn.ts';

const commands = await allCommands();

describe('one sentence and status 2', () => {
  test.each([
    [[], 'Say what to do; halfturn --help lists the commands.'],
    [['chekc'], 'There is no command chekc; did you mean check?'],
    [['paint'], 'There is no command paint; halfturn --help lists them.'],
    [['check'], 'Write it as: halfturn check PATH…'],
    [['check', '--formt', 'json', 'two.drill'], 'check has no option --formt; did you mean --format?'],
    [['check', '-q', 'two.drill'], 'check has no option -q; halfturn check --help lists them.'],
    [['check', '--level', 'eror', 'two.drill'], '--level cannot be eror: it takes error, warning, info or hint. Did you mean error?'],
    [['check', 'two.drill', '--level'], '--level needs a value: error, warning, info or hint.'],
    [['check', 'two.drill', '--level', '--fix'], '--level needs a value: error, warning, info or hint.'],
    [['check', '--fix=yes', 'two.drill'], '--fix takes no value.'],
    [['check', '--fix', '-'], '--fix changes files, and standard input is none.'],
    [['check', 'one.drill'], 'one.drill cannot be read: there is no such file or folder.'],
    [['check', '*.dril'], 'No file matches *.dril.'],
    [['check', 'empty'], 'There is no .drill file in empty.'],
    [['check', 'latin.drill'], 'latin.drill cannot be read: it is not text in UTF-8.'],
    [['format', 'one.drill'], 'one.drill cannot be read: there is no such file or folder.'],
    [['measure', 'one.drill'], 'one.drill cannot be read: there is no such file or folder.'],
    [['draw', 'two.drill'], 'Say where the picture goes: halfturn draw PATH… -o OUT'],
    [['draw', 'empty', '-o', 'a.svg'], 'a.svg is one picture, and there are more to draw: halfturn draw PATH… -o FOLDER/'],
    [['draw', 'two.drill', 'two.drill', '-o', 'a.svg'], 'a.svg is one picture, and there are more to draw: halfturn draw PATH… -o FOLDER/'],
    [['draw', 'two.drill', '-o', 'a.svg', '--format', 'png'], 'The ending of a.svg says which kind of picture it is; --format is for -o FOLDER/.'],
    [['draw', 'two.drill', '-o', 'empty/', '--drill', 'Two'], '--drill is for one picture; a folder gets every drill.'],
    [['draw', 'two.drill', '-o', 'empty/', '--format', 'png', '--animated'], '--animated is for .svg; .html and .gif move without it.'],
    [['check', 'two.drill', '--shard', '3/2'], '--shard cannot be 3/2: it takes the part and the number of parts, such as 2/5.'],
    [['check', 'two.drill', '--shard', '0/2'], '--shard cannot be 0/2: it takes the part and the number of parts, such as 2/5.'],
    [['check', 'two.drill', '--jobs', '0'], '--jobs cannot be 0: it takes a number from 1 to 256.'],
    [['draw', 'two.drill', '-o', 'a.pdf'], 'a.pdf must end in .svg, .png, .html or .gif.'],
    [['draw', 'two.drill', '-o', 'no/a.svg'], 'no/a.svg cannot be written: there is no such file or folder.'],
    [['draw', 'two.drill', '-o', 'two.drill/'], 'The folder two.drill cannot be made: it is there already.'],
    [['draw', 'two.drill', '-o', 'a.svg', '--at', 'now'], '--at cannot be now: it takes a number from 0 to 86400.'],
    [['draw', 'two.drill', '-o', 'a.svg', '--at', '-1'], '--at cannot be -1: it takes a number from 0 to 86400.'],
    [['draw', 'two.drill', '-o', 'a.gif', '--at', '1'], '--at is for a picture that stands still.'],
    [['draw', 'two.drill', '-o', 'a.png', '--animated'], '--animated is for .svg; .html and .gif move without it.'],
    [['draw', 'two.drill', '-o', 'a.svg', '--scale', '2'], '--scale cannot be 2: it takes a drawing scale from 1:20 to 1:5000.'],
    [['draw', 'two.drill', '-o', 'a.svg', '--drill', 'Tow'], 'There is no drill “Tow” in two.drill; did you mean “Two”?'],
    [['draw', 'nothing.drill', '-o', 'a.svg'], 'There is no drill in nothing.drill.'],
    [['explain', 'late-reciever'], 'There is no problem with the code late-reciever; did you mean late-receiver?'],
    [['explain', 'bad-hair-day'], 'There is no problem with the code bad-hair-day; halfturn explain lists them.'],
    [['new'], 'Write it as: halfturn new NAME'],
    [['new', 'two'], 'two.drill cannot be written: it is there already.'],
    [['new', 'no/two'], 'no/two.drill cannot be written: there is no such file or folder.'],
    [['new', 'empty/'], 'Give the file a name: halfturn new "Passing square".'],
  ])('halfturn %j', async (words, sentence) => {
    const cwd = folder({
      'two.drill': sound, 'nothing.drill': '', 'latin.drill': new Uint8Array([0x2f, 0x2f, 0xfc]), 'empty/readme.txt': '', 'folder.svg/in': '',
    });
    expect(await halfturn(cwd, words)).toEqual({ status: 2, out: '', err: `halfturn: ${sentence}\n` });
  });
});

test.each(commands.map((command) => command.name))('%s --help names every option', async (name) => {
  const { status, out, err } = await halfturn('/', [name, 'anything', '--help']);
  const command = commands.find((each) => each.name === name)!;
  expect({ status, err }).toEqual({ status: 0, err: '' });
  expect(out).toMatch(new RegExp(`^Usage: halfturn ${name} `));
  for (const option of Object.keys(command.options)) expect(out).toContain(`--${option}`);
});

test('--help names every command', async () => {
  const { status, out } = await halfturn('/', ['--help']);
  expect(status).toBe(0);
  for (const { name, summary } of commands) expect(out).toMatch(new RegExp(`^  ${name} +${summary.slice(0, 9)}`, 'm'));
});
