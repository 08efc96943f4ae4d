import { command } from '../command.ts';
export const watch = command({ name: 'watch', operands: 'PATH', summary: 'x', more: [], takes: [1, 1], options: {}, run: () => 0 });
