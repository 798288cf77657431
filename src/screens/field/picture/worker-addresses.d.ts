/** The address of a script that runs beside the page, as the app's build names it. */
declare module "*?worker&url" {
  const address: string;
  export default address;
}
