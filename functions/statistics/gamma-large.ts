/**
 * The incomplete gamma function of a large a, where its series and its continued fraction need some √a terms: Temme's
 * uniform expansion (Temme 1979, SIAM J Math Anal 10:757–766; NIST DLMF 8.12).
 */
import { deviance } from './beta.ts';
import { normalBelow, normalDensity } from './normal.ts';

/** From here on: three terms in 1/a are exact to a double wherever a tail is above 1e-308. */
export const LARGE = 100_000;

/** Coefficients of η⁰, η¹, … in the terms of a⁰, a⁻¹ and a⁻² (tests/reference/temme.py computes them from the definition). */
const TERMS = [
  [
    -0.3333333333333333, 0.08333333333333333, -0.014814814814814815, 0.0011574074074074073,
    0.0003527336860670194, -0.0001787551440329218, 0.00003919263178522438, -0.0000021854485106799924,
    -0.00000185406221071516, 8.296711340953087e-7, -1.7665952736826078e-7, 6.707853543401498e-9,
  ],
  [
    -0.001851851851851852, -0.003472222222222222, 0.0026455026455026454, -0.0009902263374485596,
    0.00020576131687242798, -4.018775720164609e-7, -0.000018098550334489977,
  ],
  [0.004133597883597883, -0.0026813271604938273, 0.0007716049382716049],
] as const;

/** Both tails of the regularised incomplete gamma function of a > LARGE and x > 0. */
export function gammaTailsOfLarge(a: number, x: number): { readonly below: number; readonly above: number } {
  const z = Math.sign(x - a) * Math.sqrt(2 * deviance(a, x));
  const eta = z / Math.sqrt(a);
  const sum = TERMS.reduceRight(
    (rest, term) => term.reduceRight((inner, c) => inner * eta + c, 0) + rest / a,
    0,
  );
  const shift = (normalDensity(z) / Math.sqrt(a)) * sum;
  // far out the density is 0, whatever the sum is
  if (!(Math.abs(z) < 40)) return { below: z < 0 ? 0 : 1, above: z < 0 ? 1 : 0 };
  return { below: normalBelow(z) - shift, above: normalBelow(-z) + shift };
}
