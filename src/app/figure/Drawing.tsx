import type { Figure, Point, PostureFigure } from '../../session/api.ts';
import type { Body } from './body.ts';
import { bodyOf } from './body.ts';
import type { Extent, Frame } from './geometry.ts';
import { arc, frameFor, line, towards } from './geometry.ts';
import { centimetres, degrees, inWords, isPosture } from './words.ts';

export const drawingWidth = 340;
export const drawingHeight = 392;
const margin = { left: 34, right: 16, top: 18, bottom: 40 };

/** Radius of a bar's shaft sleeve and of a full-size plate, cm: 50 mm sleeves, 450 mm discs (common competition sizes). */
const sleeve = 2.5;
const plate = 22.5;

/** The lifter to scale: the set-up that is chosen in full, the other one as a thin outline behind it. */
export function Drawing({ figure, plates }: { figure: Figure; plates: boolean }) {
  const flat = isPosture(figure.flat) ? figure.flat : null;
  const lifted = figure.lifted && isPosture(figure.lifted) ? figure.lifted : null;
  const main = lifted ?? flat;
  if (!main) return null;
  const ghost = lifted ? flat : null;
  const frame = frameFor(extentOf([main, ghost], plates), drawingWidth, drawingHeight, margin);
  return (
    <svg
      class="drawing"
      viewBox={`0 0 ${drawingWidth} ${drawingHeight}`}
      role="img"
      aria-label={inWords(figure)}
      data-scale={frame.scale}
    >
      <defs>
        <pattern
          id="ground-hatch"
          width="6"
          height="6"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <path d="M0 0V6" />
        </pattern>
        <pattern
          id="wedge-hatch"
          width="4"
          height="4"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(-45)"
        >
          <path d="M0 0V4" />
        </pattern>
      </defs>
      <Ground frame={frame} />
      <Ruler frame={frame} top={extentOf([main, ghost], plates).top} />
      {ghost && <Lifter body={bodyOf(ghost, frame)} kind="ghost" />}
      {plates && (
        <circle class="plate" cx={frame.x(main.bar[0])} cy={frame.y(main.bar[1])} r={plate * frame.scale} />
      )}
      <Lifter body={bodyOf(main, frame)} kind="main" />
      <MidFoot frame={frame} main={main} />
      <ErrorBand main={main} error={figure.leanError} frame={frame} />
      <Bar at={frame.at(main.bar)} scale={frame.scale} />
      <Angles main={main} ghost={ghost} frame={frame} />
      {main.lift > 0 && <LiftMark main={main} frame={frame} />}
    </svg>
  );
}

function extentOf(postures: readonly (PostureFigure | null)[], plates: boolean): Extent {
  let left = -30;
  let right = 30;
  let top = 60;
  for (const posture of postures) {
    if (!posture) continue;
    const trunk = Math.hypot(posture.shoulder[0] - posture.hip[0], posture.shoulder[1] - posture.hip[1]);
    left = Math.min(left, posture.hip[0] - trunk * 0.22, posture.heel[0] - 3);
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

function Ground({ frame }: { frame: Frame }) {
  const y = frame.y(0);
  return (
    <g class="ground">
      <rect x="12" y={y} width={drawingWidth - 24} height="8" fill="url(#ground-hatch)" />
      <path d={line([12, y], [drawingWidth - 12, y])} />
    </g>
  );
}

/** Heights, so that the eye can check the scale. */
function Ruler({ frame, top }: { frame: Frame; top: number }) {
  const ticks = Array.from({ length: Math.floor(top / 10) + 1 }, (_, index) => index * 10);
  return (
    <g class="ruler">
      {ticks.map((cm) => (
        <path key={cm} d={line([12, frame.y(cm)], [cm % 50 === 0 ? 22 : 17, frame.y(cm)])} />
      ))}
      {ticks
        .filter((cm) => cm % 50 === 0)
        .map((cm) => (
          <text key={cm} x="25" y={frame.y(cm) - 3}>
            {cm === 0 ? '0 cm' : cm}
          </text>
        ))}
    </g>
  );
}

function MidFoot({ frame, main }: { frame: Frame; main: PostureFigure }) {
  const x = frame.x(0);
  return (
    <g class="midfoot">
      <path d={line([x, frame.y(0) + 12], [x, Math.max(10, frame.y(main.bar[1]) - 26)])} />
      <text x={x} y={frame.y(0) + 26} text-anchor="middle">
        mid-foot
      </text>
    </g>
  );
}

function Lifter({ body, kind }: { body: Body; kind: 'main' | 'ghost' }) {
  const [rx, ry] = body.headRadii;
  const [hx, hy] = body.headCentre;
  return (
    <g class={`lifter ${kind}`}>
      {body.wedge && <path class="wedge" d={body.wedge} />}
      <path class="skin" d={body.foot} />
      <path class="skin" d={body.neck} />
      <ellipse
        class="skin"
        cx={hx}
        cy={hy}
        rx={rx}
        ry={ry}
        transform={`rotate(${body.headTurn} ${hx} ${hy})`}
      />
      {body.skin.map((outline) => (
        <path key={outline} class="skin" d={outline} />
      ))}
      {body.arm.map((outline) => (
        <path key={outline} class="skin arm" d={outline} />
      ))}
      <path class="arms" d={body.armLinks} />
      <path class="links" d={body.links} />
      {body.joints.map(([x, y]) => (
        <circle key={`${x},${y}`} class="joint" cx={x} cy={y} r={kind === 'main' ? 3.2 : 2} />
      ))}
    </g>
  );
}

function Bar({ at: [x, y], scale }: { at: Point; scale: number }) {
  const r = Math.max(4.5, sleeve * scale);
  return (
    <g class="bar">
      <circle cx={x} cy={y} r={r} />
      <path d={`${line([x - r - 3, y], [x + r + 3, y])}${line([x, y - r - 3], [x, y + r + 3])}`} />
    </g>
  );
}

/** How far the lean may be off: a piece of the lean's own arc, as wide as the error. */
function ErrorBand({ main, error, frame }: { main: PostureFigure; error: number | null; frame: Frame }) {
  if (error === null) return null;
  const radius = leanRadius(main, frame);
  return (
    <path class="error-band" d={arc(frame.at(main.hip), radius, main.lean - error, main.lean + error)} />
  );
}

const leanRadius = ({ hip, shoulder }: PostureFigure, frame: Frame): number =>
  Math.hypot(shoulder[0] - hip[0], shoulder[1] - hip[1]) * frame.scale * 0.82;

/** Lean and shank as arcs from the vertical; their figures stand behind the vertical, where nothing is drawn. */
function Angles({ main, ghost, frame }: { main: PostureFigure; ghost: PostureFigure | null; frame: Frame }) {
  const hip = frame.at(main.hip);
  const ankle = frame.at(main.ankle);
  const shank = Math.hypot(main.knee[0] - main.ankle[0], main.knee[1] - main.ankle[1]) * frame.scale;
  const radius = leanRadius(main, frame);
  const shankRadius = shank * 0.56;
  return (
    <g class="angles">
      <path class="reference" d={line(hip, towards(hip, 0, radius + 14))} />
      <path class="sweep" d={arc(hip, radius, 0, main.lean)} />
      <text class="lean" x={hip[0] - 7} y={hip[1] - radius + 4} text-anchor="end">
        {degrees(main.lean)}
      </text>
      {ghost && (
        <text class="ghost-lean" x={hip[0] - 7} y={hip[1] - radius + 20} text-anchor="end">
          flat {degrees(ghost.lean)}
        </text>
      )}
      <path class="reference" d={line(ankle, towards(ankle, 0, shankRadius + 12))} />
      <path class="sweep" d={arc(ankle, shankRadius, 0, main.shank)} />
      <text x={ankle[0] - 6} y={ankle[1] - shankRadius + 4} text-anchor="end">
        {degrees(main.shank)}
      </text>
    </g>
  );
}

function LiftMark({ main, frame }: { main: PostureFigure; frame: Frame }) {
  const x = frame.x(main.heel[0]) - 12;
  const top = frame.y(main.lift);
  const floor = frame.y(0);
  return (
    <g class="lift-mark">
      <path d={`${line([x, top], [x, floor])}${line([x - 3, top], [frame.x(main.heel[0]) - 2, top])}`} />
      <text x={x - 4} y={top - 4} text-anchor="end">
        {centimetres(main.lift)}
      </text>
    </g>
  );
}
