/** What a guide that speaks of leans and lifts says at its end. */
export const leanCautions: readonly string[] = [
  'Leans are shown in whole degrees beside their error: ±1 cm and ±2° of measuring error are ±2–3° of lean.',
  'Estimates from a static two-dimensional model and from published group equations: for comparing set-ups of one lifter, not for diagnosis.',
  'A heel lift moves demand from hip and back toward the knee.',
];

/** What every guide says. */
export const safetyCautions: readonly string[] = [
  'Pain, numbness or a recent injury: stop and see a licensed clinician.',
  'Near-maximal loads: safety pins or spotters and a qualified coach.',
  'Follow local rules for testing minors and for keeping health data.',
];

export const loadCaution =
  'Load, monotony and strain describe the training that was logged; they are not shown to predict or prevent injury.';
