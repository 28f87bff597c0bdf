import { defineConfig } from 'vite';

export default defineConfig({ build: { outDir: 'dist/app', emptyOutDir: true } });
