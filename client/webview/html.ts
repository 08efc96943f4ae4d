/** The page of the pitch. Nothing in it is inline but markup: scripts and styles are files, and its policy allows no others. */

export interface PageFiles {
  /** Addresses as the page sees them. */
  readonly script: string;
  readonly style: string;
  /** Where scripts, styles and fonts may come from. */
  readonly source: string;
  readonly nonce: string;
}

export function pageHtml({ script, style, source, nonce }: PageFiles): string {
  const policy = [`default-src 'none'`, `style-src ${source}`, `font-src ${source}`, `script-src 'nonce-${nonce}'`].join('; ');
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Pitch</title>
<link rel="stylesheet" href="${style}">
</head>
<body>
<main id="page">
<header>
<h1 id="title">Pitch</h1>
<p id="choices"><label id="drill-choice" hidden>Drill <select id="drill"></select></label>
<label id="phase-choice" hidden>Phase <select id="phase"></select></label></p>
</header>
<section id="pitch-pane" aria-label="Pitch">
<svg id="pitch" xmlns="http://www.w3.org/2000/svg" role="group" tabindex="0" aria-label="The pitch, drawn to scale" aria-describedby="pitch-words" aria-keyshortcuts="+ - 0"></svg>
<p id="pitch-words" class="only-heard"></p>
<p id="hint" aria-hidden="true" hidden></p>
<div id="notice" role="status"><p id="notice-words" hidden></p></div>
<p id="empty">Write a drill, or open a <b>.drill</b> file: its pitch appears here.</p>
<div id="tools" role="toolbar" aria-label="View">
${button('larger', 'Zoom in', 'M3 8h10M8 3v10')}
${button('smaller', 'Zoom out', 'M3 8h10')}
${button('fit', 'Show all', 'M3 6V3h3M10 3h3v3M13 10v3h-3M6 13H3v-3')}
<details id="layers"><summary aria-label="Layers" title="Layers">${icon('M8 2.5l6 3-6 3-6-3zM2.5 8.3L8 11l5.5-2.7M2.5 11L8 13.7 13.5 11')}</summary>
<fieldset><legend>Layers</legend>
${layer('paths', 'Paths')}
${layer('dimensions', 'Dimensions')}
${layer('names', 'Names')}
${layer('slack', 'Time in hand')}
${layer('grid', 'Grid')}
<span id="game-layers" hidden>
${layer('lanes', 'Passing lanes')}
${layer('numbers', 'Numbers in zones')}
${layer('control', 'Ground controlled', false)}
</span>
</fieldset></details>
</div>
</section>
<p id="ground" hidden></p>
<section id="player" aria-label="Player">
${button('back', 'Beat before', 'M11 3.5L5.5 8l5.5 4.5zM4.5 3.5v9')}
<button id="play" type="button" aria-label="Play" title="Play">${icon('M5 3l8 5-8 5z', 'when-resting')}${icon('M5.5 3.5v9M10.5 3.5v9', 'when-playing')}</button>
${button('next', 'Next beat', 'M5 3.5L10.5 8 5 12.5zM11.5 3.5v9')}
<input id="time" type="range" min="0" max="0" step="0.05" value="0" aria-label="Time">
<output id="clock" for="time">0.0 s</output>
<label>Speed <select id="speed"><option value="0.25">¼</option><option value="0.5">½</option><option value="1" selected>1</option><option value="2">2</option><option value="4">4</option></select></label>
<label><input id="loop" type="checkbox"> Loop</label>
<label id="rounds-choice" title="Repetitions in a row, until everyone is where they began"><input id="rounds" type="checkbox"> Go round</label>
<label id="on-choice" title="At its end goes on with the phase that follows" hidden><input id="on" type="checkbox"> Play on</label>
</section>
<section id="strip-pane" aria-label="Time line">
<svg id="strip" xmlns="http://www.w3.org/2000/svg" role="img" aria-label="Time line: who runs, waits and has the ball when"></svg>
</section>
<section id="mend" aria-labelledby="mend-heading" hidden>
<h2 id="mend-heading">To mend</h2>
<ul id="problems"></ul>
</section>
<section id="order" aria-labelledby="order-heading" hidden>
<h2 id="order-heading">Order of play</h2>
<ol id="beats"></ol>
</section>
<p id="said" class="only-heard" role="status"></p>
</main>
<script nonce="${nonce}" src="${script}"></script>
</body>
</html>
`;
}

function button(id: string, label: string, path: string): string {
  return `<button id="${id}" type="button" aria-label="${label}" title="${label}">${icon(path)}</button>`;
}

function icon(path: string, className = ''): string {
  return `<svg class="icon ${className}" viewBox="0 0 16 16" width="16" height="16" aria-hidden="true"><path d="${path}"/></svg>`;
}

function layer(name: string, label: string, on = true): string {
  return `<label><input type="checkbox" data-toggles="${name}"${on ? ' checked' : ''}> ${label}</label>`;
}
