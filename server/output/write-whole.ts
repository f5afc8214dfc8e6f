/** What became of one file that was to be written. */
export type Written =
  | { readonly written: true; readonly path: string }
  /** Nothing was changed on disk. `why` is a clause: "is not a file of Loomwright's". */
  | { readonly written: false; readonly path: string; readonly why: string };
