import { batch, computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import {
  facingOf,
  type Observation,
  PLATE,
  POINTS,
  type PointId,
  type Spot,
  type Spots,
} from '../../session/picture/points.ts';
import { type Readings, readingsOf } from '../../session/picture/readings.ts';
import type { Medium } from './medium.ts';

/** What is being digitised: the picture, the points placed so far, and what they say. It lives as long as the page. */
export interface Digitising {
  readonly medium: Signal<Medium | null>;
  /** Time of the frame on show, s. */
  readonly time: Signal<number>;
  readonly points: Signal<Spots>;
  /** The point that the next click places. */
  readonly active: Signal<PointId>;
  /** Chosen by hand; null follows toe and heel. */
  readonly looks: Signal<'right' | 'left' | null>;
  readonly line: Signal<'floor' | 'plumb'>;
  readonly length: Signal<number>;
  readonly camera: Signal<number | null>;
  readonly nearer: Signal<number>;
  readonly seen: ReadonlySignal<Observation>;
  readonly readings: ReadonlySignal<Readings>;
  /** True when points were moved since they were saved or loaded. */
  readonly changed: Signal<boolean>;
  readonly canUndo: ReadonlySignal<boolean>;
  place(id: PointId, at: Spot, step?: boolean): void;
  remove(id: PointId): void;
  undo(): void;
  load(seen: Observation | null): void;
  show(medium: Medium | null): void;
}

export function digitising(): Digitising {
  const medium = signal<Medium | null>(null);
  const time = signal(0);
  const points = signal<Spots>({});
  const active = signal<PointId>('toe');
  const looks = signal<'right' | 'left' | null>(null);
  const line = signal<'floor' | 'plumb'>('floor');
  const length = signal<number>(PLATE);
  const camera = signal<number | null>(null);
  const nearer = signal(0);
  const changed = signal(false);
  const past = signal<readonly Spots[]>([]);
  const seen = computed<Observation>(() => ({
    points: points.value,
    facing: looks.value ?? facingOf(points.value) ?? 'right',
    line: line.value,
    length: length.value,
    camera: camera.value,
    nearer: nearer.value,
    file: medium.value?.name ?? '',
    hash: medium.value?.hash ?? '',
    time: medium.value?.is === 'film' ? time.value : (medium.value?.frame ?? null),
  }));
  const set = (next: Spots, step: boolean) => {
    batch(() => {
      if (step) past.value = [...past.peek().slice(-199), points.peek()];
      points.value = next;
      changed.value = true;
    });
  };
  return {
    medium,
    time,
    points,
    active,
    looks,
    line,
    length,
    camera,
    nearer,
    seen,
    readings: computed(() => readingsOf(seen.value)),
    changed,
    canUndo: computed(() => past.value.length > 0),
    place: (id, at, step = true) => set({ ...points.peek(), [id]: at }, step),
    remove: (id) => {
      const { [id]: gone, ...rest } = points.peek();
      if (gone) set(rest, true);
    },
    undo: () => {
      const last = past.peek().at(-1);
      if (!last) return;
      batch(() => {
        past.value = past.peek().slice(0, -1);
        points.value = last;
        changed.value = true;
      });
    },
    load: (stored) => {
      batch(() => {
        points.value = stored?.points ?? {};
        past.value = [];
        changed.value = false;
        looks.value = stored?.facing ?? null;
        active.value = nextPoint(points.peek(), null);
        if (!stored) return;
        line.value = stored.line;
        length.value = stored.length;
        camera.value = stored.camera;
        nearer.value = stored.nearer;
      });
    },
    show: (next) => {
      medium.peek()?.close();
      batch(() => {
        medium.value = next;
        time.value = 0;
      });
    },
  };
}

/** The point to place after one: the next in the list that has no place yet. */
export function nextPoint(points: Spots, after: PointId | null): PointId {
  const from = after === null ? 0 : POINTS.findIndex(({ id }) => id === after) + 1;
  const open = [...POINTS.slice(from), ...POINTS.slice(0, from)].find(({ id }) => !points[id]);
  return open?.id ?? after ?? 'toe';
}
