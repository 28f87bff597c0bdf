/** The points that are placed on a side picture, and what a row keeps of them. Coordinates are the picture's own: x to the right, y down. */

export const POINTS = [
  { id: 'toe', label: 'Toe', where: 'tip of the longest toe, or of the shoe' },
  { id: 'heel', label: 'Heel', where: 'back of the heel, on the sole' },
  { id: 'ankle', label: 'Ankle', where: 'lateral malleolus, the bump outside the ankle' },
  { id: 'knee', label: 'Knee', where: 'lateral femoral epicondyle, the bump outside the knee' },
  { id: 'hip', label: 'Hip', where: 'greater trochanter, the bump outside the hip' },
  { id: 'shoulder', label: 'Shoulder', where: 'acromion, the tip of the shoulder' },
  { id: 'bar', label: 'Bar', where: 'centre of the bar’s end' },
  {
    id: 'scale_1',
    label: 'Length, one end',
    where: 'one edge of the plate, or one end of a length you know',
  },
  { id: 'scale_2', label: 'Length, other end', where: 'the opposite edge, straight across the centre' },
  { id: 'level_1', label: 'Level, one end', where: 'one end of a line that is level or upright in the gym' },
  { id: 'level_2', label: 'Level, other end', where: 'its other end, as far away as it shows' },
] as const;

export type PointId = (typeof POINTS)[number]['id'];
export interface Spot {
  readonly x: number;
  readonly y: number;
}
export type Spots = Readonly<Partial<Record<PointId, Spot>>>;

/** Everything about a digitised frame that the book stores: raw numbers, so that all else can be computed again. */
export interface Observation {
  readonly points: Spots;
  readonly facing: 'right' | 'left';
  readonly line: 'floor' | 'plumb';
  /** The length between the two scale points, cm. */
  readonly length: number;
  /** From the camera to the plane of the joints, cm; null where it was not measured. */
  readonly camera: number | null;
  /** How much nearer to the camera than the joints the known length is, cm. */
  readonly nearer: number;
  readonly file: string;
  /** SHA-256 of the file, hexadecimal. */
  readonly hash: string;
  /** Time of the frame in a film, s; null for a picture. */
  readonly time: number | null;
}

/** Diameter of the largest disc in competition, cm (technical rules of the lifting federations). */
export const PLATE = 45;

/** Where the lifter looks, as toe and heel say. */
export const facingOf = ({ toe, heel }: Spots): 'right' | 'left' | null =>
  !toe || !heel || toe.x === heel.x ? null : toe.x > heel.x ? 'right' : 'left';
