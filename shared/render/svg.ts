/** A scene as SVG. The same scene and options give the same bytes. */
import { cssWeight, fontFamily } from '../font/text.ts';
import { type Frame, frameAt, isShown, moverAt } from '../scene/frame.ts';
import { type Ink, type Paint, palettes } from '../scene/palette.ts';
import { layers, type Mark, type Mover, type Scene, type Shape } from '../scene/scene.ts';
import { mm } from '../scene/shapes.ts';
import { animationCss, momentClasses } from './animation.ts';
import { fontCss } from './font-css.ts';
import { liftPerMetre } from './lift.ts';
import { escapeXml } from './xml.ts';

export interface SvgOptions {
  /** Seconds: everyone and every ball as they are then, with a cursor on the time line. Without it the picture of the whole. */
  readonly at?: number;
  /** Moves by itself, also as an image in a page: loops, rests under the pointer and where less motion is asked for. */
  readonly animated?: boolean;
  /** Carries the Latin part of the font, so that it looks the same where the font is not installed. */
  readonly embedFont?: boolean;
  /** Marks can be reached by keyboard and carry their place in the text as `data-from` and `data-to`. */
  readonly interactive?: boolean;
  /** Colours as CSS variables named after the inks (`var(--ball)`), for a page that brings its own. */
  readonly variables?: boolean;
  /** Put before every id, where several pictures share a page. */
  readonly prefix?: string;
  /** Shown so many times larger than the scene's own millimetres. */
  readonly enlarged?: number;
}

export function toSvg(scene: Scene, options: SvgOptions = {}): string {
  const write = writer(scene, options);
  const frame = options.at === undefined ? null : frameAt(scene, options.at);
  const moves = options.animated === true && scene.end > 0;
  const prefix = escapeXml(options.prefix ?? '');
  const changes = moves || options.interactive === true;
  const css = [options.embedFont === true ? fontCss : '', moves ? animationCss(scene) : ''].join('');
  // At a moment everyone is elsewhere: the names of where they started, and the marks of where they will be, are left out.
  const gone = new Set(frame ? scene.movers.map(({ id }) => id.replace('person-', 'name-')) : []);
  const body = layers.map((layer) => {
    const marks = scene.marks.filter((mark) => mark.layer === layer && !(frame && layer === 'later') && !gone.has(mark.id) && (changes || isShown(mark, frame?.time ?? 0)));
    const movers = layer === 'people' ? write.movers('person', frame) : layer === 'ball' ? write.movers('ball', frame) : '';
    const cursor = layer === 'strip' && (frame || moves || options.interactive) ? write.cursor(frame) : '';
    const inside = marks.map(write.mark).join('') + movers + cursor;
    return inside === '' ? '' : `<g id="${prefix}layer-${layer}">${inside}</g>\n`;
  });
  const { width, height } = scene;
  const shown = options.enlarged ?? 1;
  const role = options.interactive ? 'group' : 'img';
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${mm(width * shown)}mm" height="${mm(height * shown)}mm" viewBox="0 0 ${mm(width)} ${mm(height)}" `,
    `role="${role}" aria-labelledby="${prefix}drawing-title ${prefix}drawing-description" font-family="${fontStack}" stroke-linecap="butt" stroke-linejoin="round">\n`,
    `<title id="${prefix}drawing-title">${escapeXml(scene.title)}</title>\n<desc id="${prefix}drawing-description">${escapeXml(scene.description)}</desc>\n`,
    css === '' ? '' : `<style>${css}</style>\n`,
    `<rect width="${mm(width)}" height="${mm(height)}" fill="${write.paint('paper')}"/>\n`,
    ...body,
    '</svg>\n',
  ].join('');
}

/** Shapes on so many millimetres, for a page that brings the colours of their inks. */
export function shapesToSvg(shapes: readonly Shape[], width: number, height: number, label: string): string {
  const write = writer({ theme: 'print', marks: [], movers: [], strip: null }, { variables: true });
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${mm(width)}mm" height="${mm(height)}mm" viewBox="0 0 ${mm(width)} ${mm(height)}" `,
    `role="img" aria-label="${escapeXml(label)}" font-family="${fontStack}" stroke-linejoin="round">${shapes.map(write.shape).join('')}</svg>\n`,
  ].join('');
}

/** Millimetres of the square that every mover has to itself on their common sheet. */
export const stampSize = 12;

/** Everything that moves, each in the middle of a square of its own from left to right, then the shadow of balls: for films. */
export function stampsSvg(scene: Scene): string {
  const write = writer(scene, {});
  const stamps = [...scene.movers.map((mover) => mover.shapes.map(write.shape).join('')), write.shadow];
  const [width, height] = [stampSize * stamps.length, stampSize].map(mm);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" font-family="${fontStack}">`,
    ...stamps.map((inside, index) => `<g transform="translate(${mm(stampSize * (index + 0.5))} ${mm(stampSize / 2)})">${inside}</g>`),
    '</svg>',
  ].join('');
}

/** Thousandths, so that the last digit of a double changes no picture. */
function seconds(time: number): string {
  return `${Math.round(time * 1000) / 1000}`;
}

const fontStack = `'${fontFamily}', 'Arial Narrow', system-ui, sans-serif`;

function writer(scene: Pick<Scene, 'theme' | 'marks' | 'movers' | 'strip'>, options: SvgOptions) {
  const palette = palettes[scene.theme];
  const paint = (ink: Paint | null) => (ink === null ? 'none' : ink.startsWith('#') ? ink : options.variables ? `var(--${ink})` : palette[ink as Ink]);

  const shape = (one: Shape): string => {
    switch (one.kind) {
      case 'path':
        return `<path d="${one.d}"${pen(one)}/>`;
      case 'circle':
        return `<circle cx="${mm(one.x)}" cy="${mm(one.y)}" r="${mm(one.r)}"${pen(one)}/>`;
      case 'text': {
        const anchor = one.anchor === 'start' ? '' : ` text-anchor="${one.anchor}"`;
        const turn = one.upright ? ` transform="rotate(-90 ${mm(one.x)} ${mm(one.y)})"` : '';
        return `<text x="${mm(one.x)}" y="${mm(one.y)}" font-size="${mm(one.size)}" font-weight="${cssWeight[one.weight]}" fill="${paint(one.fill)}"${anchor}${turn}>${escapeXml(one.text)}</text>`;
      }
      case 'group':
        return `<g transform="translate(${mm(one.x)} ${mm(one.y)})">${one.shapes.map(shape).join('')}</g>`;
    }
  };
  const pen = ({ fill, stroke, width, dash }: { fill: Paint | null; stroke: Paint | null; width: number; dash: string | null }) =>
    ` fill="${paint(fill)}"${stroke === null ? '' : ` stroke="${paint(stroke)}" stroke-width="${mm(width)}"`}${dash === null ? '' : ` stroke-dasharray="${dash}"`}`;

  const attributes = ({ id, span, label }: Pick<Mark, 'id' | 'span' | 'label'>) => {
    const source = options.interactive && span ? ` data-from="${span.from}" data-to="${span.to}"` : '';
    const focus = options.interactive && label !== null ? ` tabindex="0" role="img" aria-label="${escapeXml(label)}"` : '';
    return ` id="${prefix}${escapeXml(id.replaceAll(' ', '-'))}"${source}${focus}`;
  };

  const momentNames = momentClasses(scene);
  const prefix = escapeXml(options.prefix ?? '');
  /** The class by which a moving picture or a page shows it in its time. */
  const timing = ({ during }: Mark) => {
    if (!during || !(options.interactive || options.animated)) return '';
    return ` class="${momentNames.get(`${during.start} ${during.end}`)}" data-during="${seconds(during.start)} ${seconds(during.end)}"${during.start > 0 ? ' visibility="hidden"' : ''}`;
  };

  const shadow = `<ellipse cx="0.3" cy="0.5" rx="0.9" ry="0.6" fill="${paint('note')}" fill-opacity="0.5"/>`;
  const mover = (one: Mover, index: number, frame: Frame | null) => {
    const { x, y, height } = moverAt(one.track, frame?.time ?? 0);
    const inside = one.shapes.map(shape).join('');
    const lifted = one.kind === 'ball' ? `<g class="lift lift-${index}" transform="translate(0 ${mm(-height * liftPerMetre)})">${inside}</g>` : inside;
    return `<g${attributes(one)} class="mover mover-${index}" transform="translate(${mm(x)} ${mm(y)})">${one.kind === 'ball' ? shadow : ''}${lifted}</g>`;
  };

  return {
    paint,
    shape,
    shadow,
    mark: (mark: Mark) => `<g${attributes(mark)}${timing(mark)}>${mark.shapes.map(shape).join('')}</g>\n`,
    movers: (kind: Mover['kind'], frame: Frame | null) => scene.movers.map((one, index) => (one.kind === kind ? `${mover(one, index, frame)}\n` : '')).join(''),
    cursor: (frame: Frame | null) => {
      if (scene.strip === null) return '';
      const { left, top, bottom } = scene.strip;
      return `<g id="${prefix}cursor" class="cursor" transform="translate(${mm(frame?.cursor ?? left)} 0)"><path d="M0 ${mm(top)}V${mm(bottom)}" fill="none" stroke="${paint('ink')}" stroke-width="0.35"/><path d="M-1 ${mm(top)}h2L0 ${mm(top + 1.6)}Z" fill="${paint('ink')}"/></g>`;
    },
  };
}
