/** What a guide that speaks of leans and lifts says at its end. */
export const leanCautions: readonly string[] = [
  'Leans are shown in whole degrees beside their error. Together, errors of ±1 cm and ±2° shift the lean by about 2–4°.',
  'Estimates from a static two-dimensional model and from published group equations: for comparing set-ups of one lifter, not for diagnosis.',
  'A heel lift shifts load from the hips and lower back to the knees.',
];

/** What every guide says. */
export const safetyCautions: readonly string[] = [
  'Pain, numbness or a recent injury: stop and see a licensed clinician.',
  'Near-maximal loads: safety pins or spotters and a qualified coach.',
  'Follow local rules for testing minors and for keeping health data.',
];

export const loadCaution =
  'Load, monotony and strain describe the training that was logged; they are not shown to predict or prevent injury.';
