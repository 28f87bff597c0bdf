import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { POINTS, type PointId, type Spot } from '../../session/picture/points.ts';
import { labelOf } from '../../session/picture/readings.ts';
import { type Digitising, nextPoint } from './digitising.ts';
import { fitted, type Lie, onPicture, onStage, within, zoomed } from './picture-view.ts';

/** Lines between joints, and the two measured lines. */
export const BONES: readonly (readonly [PointId, PointId, string])[] = [
  ['heel', 'toe', 'bone'],
  ['ankle', 'knee', 'bone'],
  ['knee', 'hip', 'bone'],
  ['hip', 'shoulder', 'bone'],
  ['scale_1', 'scale_2', 'ruler'],
  ['level_1', 'level_2', 'ruler'],
];
/** How near a finger or pointer must come to take hold of a point, px. */
const NEAR = 16;
/** The same while a point waits for its place: joints may lie close together. */
const CLOSE = 6;
const LOUPE = 132;

/** A posture of the model drawn over the picture, joint by joint. */
export interface Overlay {
  readonly id: string;
  readonly label: string;
  readonly joints: Readonly<Record<'heel' | 'toe' | 'ankle' | 'knee' | 'hip' | 'shoulder', Spot>>;
}

interface Props {
  readonly at: Digitising;
  readonly overlays: readonly Overlay[];
  /** The place to be blurred when the picture is saved; while it is being drawn, a drag draws it. */
  readonly blur: { readonly on: boolean; readonly box: readonly [Spot, Spot] | null };
  readonly onBlur: (box: readonly [Spot, Spot]) => void;
}

/** The picture with its points. A click places the next point, a drag moves one, two fingers or the wheel zoom and pan. */
export function Stage({ at, overlays, blur, onBlur }: Props) {
  const stage = useRef<HTMLDivElement>(null);
  const board = useRef<HTMLDivElement>(null);
  const loupe = useRef<HTMLCanvasElement>(null);
  const size = useSignal({ width: 300, height: 300 });
  const lie = useSignal<Lie | null>(null);
  const grip = useSignal<PointId | null>(null);
  const medium = at.medium.value!;
  const now = lie.value ?? fitted(size.value, medium);
  const least = fitted(size.value, medium).zoom;
  const fingers = useRef(new Map<number, Spot>());
  const drag = useRef<{
    from: Spot;
    lie: Lie;
    kind: 'point' | 'pan' | 'blur' | 'wait';
    placed: boolean;
  } | null>(null);

  useEffect(() => {
    lie.value = null;
    const { element } = medium;
    element.classList.add('picture-medium');
    board.current!.replaceChildren(element);
    return () => element.remove();
  }, [medium]);
  useEffect(() => {
    const watch = new ResizeObserver(([entry]) => {
      const { width, height } = entry!.contentRect;
      size.value = { width, height };
    });
    watch.observe(stage.current!);
    return () => watch.disconnect();
  }, []);
  useEffect(() => {
    const { style } = medium.element;
    style.width = `${medium.width * now.zoom}px`;
    style.height = `${medium.height * now.zoom}px`;
    style.transform = `translate(${now.x}px, ${now.y}px)`;
  }, [medium, now.zoom, now.x, now.y]);

  const place = (event: PointerEvent | WheelEvent): Spot => {
    const box = stage.current!.getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  };
  const magnify = (spot: Spot | null) => {
    const canvas = loupe.current;
    if (!canvas) return;
    canvas.hidden = spot === null;
    if (!spot) return;
    const shown = onStage(now, spot);
    canvas.classList.toggle('right', shown.x < size.value.width / 2);
    const paint = canvas.getContext('2d')!;
    const across = LOUPE / (now.zoom * 3);
    const ratio = medium.is === 'picture' ? (medium.element as HTMLCanvasElement).width / medium.width : 1;
    paint.clearRect(0, 0, LOUPE, LOUPE);
    paint.imageSmoothingEnabled = now.zoom < 1;
    paint.drawImage(
      medium.element,
      (spot.x - across / 2) * ratio,
      (spot.y - across / 2) * ratio,
      across * ratio,
      across * ratio,
      0,
      0,
      LOUPE,
      LOUPE,
    );
    for (const [colour, width] of [
      ['#000', 3],
      ['#fff', 1],
    ] as const) {
      paint.strokeStyle = colour;
      paint.lineWidth = width;
      paint.beginPath();
      for (const [x, y, toX, toY] of [
        [0, 0.5, 0.42, 0.5],
        [0.58, 0.5, 1, 0.5],
        [0.5, 0, 0.5, 0.42],
        [0.5, 0.58, 0.5, 1],
      ] as const) {
        paint.moveTo(x * LOUPE, y * LOUPE);
        paint.lineTo(toX * LOUPE, toY * LOUPE);
      }
      paint.stroke();
    }
  };
  const nearest = (spot: Spot): PointId | null => {
    let found: PointId | null = null;
    let best = at.points.value[at.active.value] ? NEAR : CLOSE;
    for (const { id } of POINTS) {
      const point = at.points.value[id];
      if (!point) continue;
      const there = onStage(now, point);
      const away = Math.hypot(there.x - spot.x, there.y - spot.y);
      if (away < best || (away <= best && id === at.active.value)) [found, best] = [id, away];
    }
    return found;
  };
  const put = (id: PointId, spot: Spot, step: boolean) => {
    const inside = within(spot, medium);
    at.place(id, inside, step);
    magnify(inside);
  };

  const down = (event: PointerEvent) => {
    event.preventDefault();
    stage.current!.focus();
    stage.current!.setPointerCapture(event.pointerId);
    const spot = place(event);
    fingers.current.set(event.pointerId, spot);
    if (fingers.current.size === 2) {
      if (drag.current?.placed) at.undo();
      drag.current = { from: spot, lie: now, kind: 'pan', placed: false };
      grip.value = null;
      magnify(null);
      return;
    }
    if (event.button === 1 || event.shiftKey) {
      drag.current = { from: spot, lie: now, kind: 'pan', placed: false };
      return;
    }
    if (blur.on) {
      drag.current = { from: spot, lie: now, kind: 'blur', placed: false };
      return;
    }
    const held = nearest(spot);
    if (held) {
      at.active.value = held;
      at.place(held, at.points.value[held]!);
    } else put(at.active.value, onPicture(now, spot), true);
    grip.value = at.active.value;
    drag.current = { from: spot, lie: now, kind: 'point', placed: true };
    magnify(at.points.value[at.active.value]!);
  };
  const move = (event: PointerEvent) => {
    const begun = drag.current;
    if (!begun || !fingers.current.has(event.pointerId)) return;
    const spot = place(event);
    const before = [...fingers.current.values()];
    fingers.current.set(event.pointerId, spot);
    const after = [...fingers.current.values()];
    if (after.length === 2) {
      const middle = ([a, b]: readonly Spot[]) => ({ x: (a!.x + b!.x) / 2, y: (a!.y + b!.y) / 2 });
      const apart = ([a, b]: readonly Spot[]) => Math.hypot(a!.x - b!.x, a!.y - b!.y) || 1;
      const [from, to] = [middle(before), middle(after)];
      const near = zoomed(now, apart(after) / apart(before), to, least);
      lie.value = { ...near, x: near.x + to.x - from.x, y: near.y + to.y - from.y };
    } else if (begun.kind === 'pan')
      lie.value = {
        ...begun.lie,
        x: begun.lie.x + spot.x - begun.from.x,
        y: begun.lie.y + spot.y - begun.from.y,
      };
    else if (begun.kind === 'blur')
      onBlur([within(onPicture(now, begun.from), medium), within(onPicture(now, spot), medium)]);
    else if (grip.value && Math.hypot(spot.x - begun.from.x, spot.y - begun.from.y) > 2)
      put(grip.value, onPicture(now, spot), false);
  };
  const up = (event: PointerEvent) => {
    fingers.current.delete(event.pointerId);
    if (fingers.current.size > 0) return;
    if (grip.value) at.active.value = nextPoint(at.points.value, grip.value);
    grip.value = null;
    drag.current = null;
    magnify(null);
  };
  const wheel = (event: WheelEvent) => {
    event.preventDefault();
    lie.value = zoomed(now, Math.exp(-event.deltaY / 300), place(event), least);
  };
  useEffect(() => {
    const element = stage.current!;
    element.addEventListener('wheel', wheel, { passive: false });
    return () => element.removeEventListener('wheel', wheel);
  });

  const keys = (event: KeyboardEvent) => {
    const id = at.active.value;
    const point = at.points.value[id];
    const centre = () => onPicture(now, { x: size.value.width / 2, y: size.value.height / 2 });
    const arrows: Record<string, readonly [number, number]> = {
      ArrowLeft: [-1, 0],
      ArrowRight: [1, 0],
      ArrowUp: [0, -1],
      ArrowDown: [0, 1],
    };
    const arrow = arrows[event.key];
    const mod = event.ctrlKey || event.metaKey;
    if (mod && event.key.toLowerCase() === 'z') at.undo();
    else if (mod || event.altKey) return;
    else if (arrow) {
      const by = event.shiftKey ? 10 : 1;
      const from = point ?? centre();
      put(id, { x: from.x + arrow[0] * by, y: from.y + arrow[1] * by }, true);
    } else if (event.key === 'Enter' || event.key === ' ') {
      if (!point) put(id, centre(), true);
      else at.active.value = nextPoint(at.points.value, id);
    } else if (event.key === 'Delete' || event.key === 'Backspace') at.remove(id);
    else if (event.key === '+' || event.key === '-')
      lie.value = zoomed(now, event.key === '+' ? 1.25 : 0.8, onStage(now, point ?? centre()), least);
    else if (event.key === '0') lie.value = null;
    else return;
    event.preventDefault();
    event.stopPropagation();
  };

  const { width, height } = size.value;
  const joint = (id: PointId): Spot | null => {
    const point = at.points.value[id];
    return point ? onStage(now, point) : null;
  };
  const chain = (overlay: Overlay): string =>
    (['toe', 'heel', 'ankle', 'knee', 'hip', 'shoulder'] as const)
      .map((id) => onStage(now, overlay.joints[id]))
      .map(({ x, y }, i) => `${i === 0 || i === 2 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`)
      .join('');
  const box = blur.box?.map((corner) => onStage(now, corner));
  return (
    <div
      ref={stage}
      class="picture-stage"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: points are placed and moved by keys here
      tabIndex={0}
      role="application"
      aria-label={`Picture. ${labelOf(at.active.value)} is next. Arrow keys move a point, Shift moves it by 10, Enter places it, plus and minus zoom.`}
      onPointerDown={down}
      onPointerMove={move}
      onPointerUp={up}
      onPointerCancel={up}
      onKeyDown={keys}
      onBlur={() => magnify(null)}
    >
      <div ref={board} class="picture-board" />
      <svg
        class="picture-lines"
        viewBox={`0 0 ${width} ${height}`}
        width={width}
        height={height}
        aria-hidden="true"
      >
        {overlays.map((overlay) => (
          <g key={overlay.id} class={`overlay ${overlay.id}`}>
            <path class="under" d={chain(overlay)} />
            <path d={chain(overlay)} />
          </g>
        ))}
        {BONES.map(([a, b, kind]) => {
          const [p, q] = [joint(a), joint(b)];
          return (
            p &&
            q && (
              <g key={`${a} ${b}`} class={kind}>
                <line class="under" x1={p.x} y1={p.y} x2={q.x} y2={q.y} />
                <line x1={p.x} y1={p.y} x2={q.x} y2={q.y} />
              </g>
            )
          );
        })}
        {POINTS.map(({ id, label }) => {
          const p = joint(id);
          return (
            p && (
              <g key={id} class={`point${id === at.active.value ? ' active' : ''}`}>
                <circle class="under" cx={p.x} cy={p.y} r="6" />
                <circle cx={p.x} cy={p.y} r="6" />
                <path d={`M${p.x - 2} ${p.y}h4M${p.x} ${p.y - 2}v4`} />
                {id === at.active.value && (
                  <text x={p.x + 10} y={p.y - 8}>
                    {label}
                  </text>
                )}
              </g>
            )
          );
        })}
        {box && (
          <rect
            class="blur-box"
            x={Math.min(box[0]!.x, box[1]!.x)}
            y={Math.min(box[0]!.y, box[1]!.y)}
            width={Math.abs(box[1]!.x - box[0]!.x)}
            height={Math.abs(box[1]!.y - box[0]!.y)}
          />
        )}
      </svg>
      <canvas ref={loupe} class="loupe" width={LOUPE} height={LOUPE} hidden />
      <div class="picture-zoom" onPointerDown={(event) => event.stopPropagation()}>
        {(
          [
            ['+', 'Zoom in', () => (lie.value = zoomed(now, 1.4, { x: width / 2, y: height / 2 }, least))],
            [
              '−',
              'Zoom out',
              () => (lie.value = zoomed(now, 1 / 1.4, { x: width / 2, y: height / 2 }, least)),
            ],
            ['⤢', 'Show the whole picture', () => (lie.value = null)],
          ] as const
        ).map(([sign, label, act]) => (
          <button
            key={label}
            type="button"
            class="tool"
            aria-label={label}
            title={label}
            onClick={() => void act()}
          >
            {sign}
          </button>
        ))}
      </div>
    </div>
  );
}
