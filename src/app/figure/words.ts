export * from '../../session/figure/drawing/words.ts';
