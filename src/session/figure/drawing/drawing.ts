/** Draws the figure of a lifter from the side. */
import type { Figure, Point, PostureFigure } from '../figure-answers.ts';
import { type Body, bodyOf } from './body.ts';
import { centimetres, degrees, inWords, isPosture } from './drawing-words.ts';
import { arc, type Extent, type Frame, frameFor, line, towards } from './geometry.ts';
import { centreLine, fan, moments, shortfall } from './loads-drawing.ts';
import { el, type Shape } from './svg-shape.ts';

const drawingWidth = 340;
const drawingHeight = 404;
const margin = { left: 34, right: 16, top: 18, bottom: 52 };

/** Radius of a bar's shaft sleeve and of a full-size plate, cm: 50 mm sleeves, 450 mm discs (common competition sizes). */
const sleeve = 2.5;
const plate = 22.5;

export interface DrawingOptions {
  /** Draws a full-size plate around the bar, as it usually is; off where it hides what matters. */
  readonly plates?: boolean;
  /** Which set-up is drawn in full: by default the lifted one where there is one, the flat one as an outline behind it. */
  readonly only?: 'flat' | 'lifted';
  /** Stands before the ids of the drawing, so that several can stand on one page. */
  readonly prefix?: string;
  /** Side lines that keep the scale of several drawings the same. */
  readonly extent?: Extent;
  /** A posture of the descent, drawn alone. */
  readonly moment?: PostureFigure;
  /** All postures of the descent, so that the scale stays the same. */
  readonly descent?: readonly PostureFigure[];
}

/** The lifter to scale as SVG: the set-up that is chosen in full, the other one as a thin outline behind it. */
export function drawingOf(figure: Figure, options: DrawingOptions = {}): Shape | null {
  const { only, prefix = '', descent = [] } = options;
  const scene = sceneOf(figure, only, options.moment);
  if (!scene) return null;
  const { main, ghost, failed, beside } = scene;
  // Arms held forward carry no bar.
  const plates = options.plates !== false && main.balanced === 'bar';
  const extent = options.extent ?? extentOf([main, ghost, ...descent], plates);
  const frame = frameFor(extent, drawingWidth, drawingHeight, margin);
  const [groundHatch, wedgeHatch] = [`${prefix}ground-hatch`, `${prefix}wedge-hatch`];
  return el(
    'svg',
    {
      class: 'drawing',
      viewBox: `0 0 ${drawingWidth} ${drawingHeight}`,
      role: 'img',
      'aria-label': inWords(figure, options.moment),
      'data-scale': frame.scale,
    },
    el('defs', {}, hatch(groundHatch, 'ground-hatch', 6, 45), hatch(wedgeHatch, 'wedge-hatch', 4, -45)),
    ground(frame, groundHatch),
    ruler(frame, extent.top),
    ghost && lifter(bodyOf(ghost, frame), beside === null ? 'ghost' : 'ghost beside', wedgeHatch),
    plates &&
      el('circle', {
        class: 'plate',
        cx: frame.x(main.bar[0]),
        cy: frame.y(main.bar[1]),
        r: plate * frame.scale,
      }),
    lifter(bodyOf(main, frame), failed === null ? 'main' : 'main failed', wedgeHatch),
    ghost && beside !== null && el('path', { class: 'beside-links', d: bodyOf(ghost, frame).links }),
    failed === null && fan(main, scene.error, leanRadius(main, frame) * 1.3, frame),
    midFoot(frame, main),
    centreLine(main, frame),
    bar(frame.at(main.bar), frame.scale),
    angles(main, ghost, beside ?? 'flat', frame),
    moments(main, frame),
    failed !== null && shortfall(main, failed, frame),
    main.lift > 0 && liftMark(main, frame),
  );
}

interface Scene {
  readonly main: PostureFigure;
  /** Drawn as an outline behind it. */
  readonly ghost: PostureFigure | null;
  /** Whose outline it is, where it is another lifter. */
  readonly beside: string | null;
  readonly error: number | null;
  /** How far the load is from mid-foot, where no posture holds. */
  readonly failed: number | null;
}

/** What is drawn in full and what behind it: the lifted set-up before the flat one, one that holds before one that fails. */
function sceneOf(
  figure: Figure,
  only: DrawingOptions['only'],
  moment: PostureFigure | undefined,
): Scene | null {
  const plain = { ghost: null, beside: null, error: null, failed: null };
  if (moment) return { ...plain, main: moment };
  const wanted =
    only === 'flat' ? figure.flat : only === 'lifted' ? figure.lifted : (figure.lifted ?? figure.flat);
  if (!wanted) return null;
  const flat = only === undefined && figure.lifted && isPosture(figure.flat) ? figure.flat : null;
  const other = only === undefined && figure.beside && isPosture(figure.beside.stand) ? figure.beside : null;
  const ghost = other ? (other.stand as PostureFigure) : flat;
  const behind = { ghost, beside: other ? other.title : null };
  if (isPosture(wanted)) {
    const numbers = wanted === figure.lifted ? figure.numbers.lifted : figure.numbers.flat;
    const error = numbers?.leanError.value;
    return { ...plain, ...behind, main: wanted, error: typeof error === 'number' ? error : null };
  }
  if (wanted.nearest)
    return { ...plain, ...behind, main: wanted.nearest.posture, failed: wanted.nearest.offset };
  return flat && { ...plain, main: flat };
}

/** What all set-ups of a figure need, so that two drawings of it have one scale. */
export const commonExtent = (figure: Figure, plates = true): Extent =>
  extentOf(
    [figure.flat, figure.lifted].map((stand) => (isPosture(stand) ? stand : null)),
    plates,
  );

function extentOf(postures: readonly (PostureFigure | null)[], plates: boolean): Extent {
  let left = -30;
  let right = 30;
  let top = 60;
  for (const posture of postures) {
    if (!posture) continue;
    const trunk = Math.hypot(posture.shoulder[0] - posture.hip[0], posture.shoulder[1] - posture.hip[1]);
    const aside = posture.hipMoment === undefined ? trunk * 0.22 : trunk * 0.22 + 16;
    left = Math.min(left, posture.hip[0] - aside, posture.heel[0] - 3);
    right = Math.max(right, posture.knee[0] + 7, posture.toe[0] + 3, posture.shoulder[0] + trunk * 0.62);
    top = Math.max(top, posture.shoulder[1] + trunk * 0.62);
    if (plates) {
      left = Math.min(left, posture.bar[0] - plate);
      right = Math.max(right, posture.bar[0] + plate);
      top = Math.max(top, posture.bar[1] + plate + 2);
    }
  }
  return { left, right, top };
}

const hatch = (id: string, name: string, size: number, turn: number): Shape =>
  el(
    'pattern',
    {
      id,
      class: name,
      width: size,
      height: size,
      patternUnits: 'userSpaceOnUse',
      patternTransform: `rotate(${turn})`,
    },
    el('path', { d: `M0 0V${size}` }),
  );

function ground(frame: Frame, fill: string): Shape {
  const y = frame.y(0);
  return el(
    'g',
    { class: 'ground' },
    el('rect', { x: 12, y, width: drawingWidth - 24, height: 8, fill: `url(#${fill})` }),
    el('path', { d: line([12, y], [drawingWidth - 12, y]) }),
  );
}

/** Heights, so that the eye can check the scale. */
function ruler(frame: Frame, top: number): Shape {
  const ticks = Array.from({ length: Math.floor(top / 10) + 1 }, (_, index) => index * 10);
  return el(
    'g',
    { class: 'ruler' },
    ticks.map((cm) => el('path', { d: line([12, frame.y(cm)], [cm % 50 === 0 ? 22 : 17, frame.y(cm)]) })),
    ticks
      .filter((cm) => cm % 50 === 0)
      .map((cm) => el('text', { x: 25, y: frame.y(cm) - 3 }, cm === 0 ? '0 cm' : cm)),
  );
}

function midFoot(frame: Frame, main: PostureFigure): Shape {
  const x = frame.x(0);
  return el(
    'g',
    { class: 'midfoot' },
    el('path', { d: line([x, frame.y(0) + 12], [x, Math.max(10, frame.y(main.bar[1]) - 26)]) }),
    el('text', { x, y: frame.y(0) + 26, 'text-anchor': 'middle' }, 'mid-foot'),
  );
}

function lifter(body: Body, kind: string, wedgeFill: string): Shape {
  const [rx, ry] = body.headRadii;
  const [hx, hy] = body.headCentre;
  const skin = (d: string) => el('path', { class: 'skin', d });
  return el(
    'g',
    { class: `lifter ${kind}` },
    body.wedge !== null && el('path', { class: 'wedge', d: body.wedge, fill: `url(#${wedgeFill})` }),
    skin(body.foot),
    skin(body.neck),
    el('ellipse', {
      class: 'skin',
      cx: hx,
      cy: hy,
      rx,
      ry,
      transform: `rotate(${body.headTurn} ${hx} ${hy})`,
    }),
    body.skin.map(skin),
    body.arm.map((d) => el('path', { class: 'skin arm', d })),
    el('path', { class: 'arms', d: body.armLinks }),
    el('path', { class: 'links', d: body.links }),
    body.joints.map(([x, y]) =>
      el('circle', { class: 'joint', cx: x, cy: y, r: kind.startsWith('main') ? 3.2 : 2 }),
    ),
  );
}

function bar([x, y]: Point, scale: number): Shape {
  const r = Math.max(4.5, sleeve * scale);
  return el(
    'g',
    { class: 'bar' },
    el('circle', { cx: x, cy: y, r }),
    el('path', { d: `${line([x - r - 3, y], [x + r + 3, y])}${line([x, y - r - 3], [x, y + r + 3])}` }),
  );
}

const leanRadius = ({ hip, shoulder }: PostureFigure, frame: Frame): number =>
  Math.hypot(shoulder[0] - hip[0], shoulder[1] - hip[1]) * frame.scale * 0.82;

/** Lean and shank as arcs from the vertical; their figures stand behind the vertical, where nothing is drawn. */
function angles(main: PostureFigure, ghost: PostureFigure | null, whose: string, frame: Frame): Shape {
  const hip = frame.at(main.hip);
  const ankle = frame.at(main.ankle);
  const shank = Math.hypot(main.knee[0] - main.ankle[0], main.knee[1] - main.ankle[1]) * frame.scale;
  const radius = leanRadius(main, frame);
  const shankRadius = shank * 0.56;
  const words = (name: string | undefined, x: number, y: number, text: string) =>
    el('text', { class: name, x, y, 'text-anchor': 'end' }, text);
  return el(
    'g',
    { class: 'angles' },
    el('path', { class: 'reference', d: line(hip, towards(hip, 0, radius + 14)) }),
    el('path', { class: 'sweep', d: arc(hip, radius, 0, main.lean) }),
    words('lean', hip[0] - 7, hip[1] - radius + 4, degrees(main.lean)),
    ghost && words('ghost-lean', hip[0] - 7, hip[1] - radius + 20, `${whose} ${degrees(ghost.lean)}`),
    el('path', { class: 'reference', d: line(ankle, towards(ankle, 0, shankRadius + 12)) }),
    el('path', { class: 'sweep', d: arc(ankle, shankRadius, 0, main.shank) }),
    words(undefined, ankle[0] - 6, ankle[1] - shankRadius + 4, degrees(main.shank)),
  );
}

function liftMark(main: PostureFigure, frame: Frame): Shape {
  const x = frame.x(main.heel[0]) - 12;
  const top = frame.y(main.lift);
  const floor = frame.y(0);
  return el(
    'g',
    { class: 'lift-mark' },
    el('path', { d: `${line([x, top], [x, floor])}${line([x - 3, top], [frame.x(main.heel[0]) - 2, top])}` }),
    el('text', { x: x - 4, y: top - 4, 'text-anchor': 'end' }, centimetres(main.lift)),
  );
}
