declare module 'nearley';
declare module 'nearley/lib/compile.js';
declare module 'nearley/lib/generate.js';
declare module 'nearley/lib/nearley-language-bootstrapped.js';
declare module 'moo';
