import { fig, got, of, type Sentences } from './wording.ts';

/** What is asked of points on a picture. */
export const photoSentences: Sentences = {
  'line-too-steep': (i) =>
    `${of(i)} is "${i.received}", and the line is ${fig(i, 'turned')} deg off; it accepts up to 45 either way. Choose "${i.details?.other}", or turn the picture upright first.`,
  'nearer-than-camera': (i) =>
    `${of(i)} got ${got(i)}; it accepts less than ${fig(i, 'camera')} cm, the distance of the camera. Check both distances.`,
  'nearer-without-camera': (i) =>
    `${of(i)} is blank, and "nearer" is ${fig(i, 'nearer')} cm; that needs the camera’s distance, a number, 50 to 5000 cm. Give it, or leave "nearer" out.`,
};
