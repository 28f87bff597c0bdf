export * from '../../session/drawing/words.ts';
