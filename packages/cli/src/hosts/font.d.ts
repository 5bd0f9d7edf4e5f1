/** A font as a data address, put into the bundle. */
declare module '*.ttf?inline' {
  const address: string;
  export default address;
}
