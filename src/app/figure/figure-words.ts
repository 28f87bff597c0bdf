export * from '../../session/figure/drawing/drawing-words.ts';
