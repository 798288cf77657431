/** The address of a file that is built beside the app and not into it. */
declare module "*?url" {
  const address: string;
  export default address;
}
