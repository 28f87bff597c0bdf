import type { Page } from 'playwright-core';

/** A posture seen from the side, cm: +x where the lifter looks, +y up, the floor under mid-foot at (0, 0). */
export interface Posture {
  readonly lean: number;
  readonly shin: number;
  readonly depth: number;
}
export interface Camera {
  readonly distance: number;
  readonly height: number;
  /** Turned clockwise about its own line of sight, deg. */
  readonly roll: number;
  /** Turned about the vertical around the lifter, deg. */
  readonly yaw: number;
  readonly looks: 'right' | 'left';
}
export type Seen = Readonly<Record<string, readonly [number, number]>>;

const rad = Math.PI / 180;
export const [WIDTH, HEIGHT] = [1200, 900] as const;
const FOCAL = 2200;
/** Half the distance between the near end of the bar’s plate and the joints, cm. */
export const NEARER = 70;

/** Where a pinhole camera shows the joints and a plate of 45 cm, in pixels. Plane geometry, written for this test. */
export function seen({ lean, shin, depth }: Posture, camera: Camera): Seen {
  const [tibia, femur, trunk] = [42, 41, 52];
  const ankle = [-7, 7] as const;
  const knee = [ankle[0] + tibia * Math.sin(shin * rad), ankle[1] + tibia * Math.cos(shin * rad)] as const;
  const hip = [knee[0] - femur * Math.cos(depth * rad), knee[1] + femur * Math.sin(depth * rad)] as const;
  const shoulder = [hip[0] + trunk * Math.sin(lean * rad), hip[1] + trunk * Math.cos(lean * rad)] as const;
  const project = ([x, y]: readonly [number, number], nearer = 0): readonly [number, number] => {
    const side = camera.looks === 'left' ? -x : x;
    const [c, s] = [Math.cos(camera.yaw * rad), Math.sin(camera.yaw * rad)];
    const across = side * c - nearer * s;
    const away = camera.distance - (side * s + nearer * c);
    const [px, py] = [(FOCAL * across) / away, (-FOCAL * (y - camera.height)) / away];
    const [rc, rs] = [Math.cos(camera.roll * rad), Math.sin(camera.roll * rad)];
    return [WIDTH / 2 + px * rc - py * rs, HEIGHT / 2 + px * rs + py * rc];
  };
  return {
    Toe: project([13.5, 0]),
    Heel: project([-13.5, 0]),
    Ankle: project(ankle),
    Knee: project(knee),
    Hip: project(hip),
    Shoulder: project(shoulder),
    Bar: project([0, shoulder[1] - 4]),
    'Length, one end': project([-22.5, shoulder[1] - 4], NEARER),
    'Length, other end': project([22.5, shoulder[1] - 4], NEARER),
    'Level, one end': project([-70, 0]),
    'Level, other end': project([70, 0]),
  };
}

/** A PNG of the posture, drawn by the browser. */
export async function drawn(page: Page, points: Seen): Promise<Buffer> {
  const base64 = await page.evaluate(
    ({ points, width, height }) => {
      const canvas = document.createElement('canvas');
      [canvas.width, canvas.height] = [width, height];
      const paint = canvas.getContext('2d')!;
      paint.fillStyle = '#cfd8d2';
      paint.fillRect(0, 0, width, height);
      const line = (names: readonly string[], thick: number, colour: string) => {
        paint.beginPath();
        paint.lineWidth = thick;
        paint.strokeStyle = colour;
        paint.lineCap = 'round';
        for (const name of names) paint.lineTo(...(points[name] as unknown as [number, number]));
        paint.stroke();
      };
      line(['Level, one end', 'Level, other end'], 6, '#59615c');
      line(['Length, one end', 'Length, other end'], 10, '#8b2f2f');
      line(['Heel', 'Toe'], 18, '#2c3b46');
      line(['Ankle', 'Knee', 'Hip', 'Shoulder'], 26, '#35566b');
      return canvas.toDataURL('image/png').split(',')[1]!;
    },
    { points: points as unknown as Record<string, [number, number]>, width: WIDTH, height: HEIGHT },
  );
  return Buffer.from(base64, 'base64');
}
