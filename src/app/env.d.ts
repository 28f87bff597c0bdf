/// <reference types="vite/client" />

interface ImportMetaEnv {
  /** Licence key of the grid library, for use beyond personal and evaluation use. */
  readonly VITE_GRID_LICENCE_KEY?: string;
}
