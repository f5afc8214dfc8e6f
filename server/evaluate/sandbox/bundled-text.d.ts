/** Made by `bundled-text-plugin.mjs`: the named file, and all it imports, as the text of one JavaScript module. */
declare module "bundled-text:*" {
  const text: string;
  export default text;
}
