// Files the build generates and the bundler takes in as text.

declare module "*.deflate" {
  /** Raw deflate, in base64. */
  const base64: string;
  export default base64;
}
