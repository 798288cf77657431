declare module "jstat" {
  interface Distribution {
    cdf(x: number, ...parameters: readonly number[]): number;
    inv(p: number, ...parameters: readonly number[]): number;
  }
  interface Library {
    readonly chisquare: Distribution;
    readonly studentt: Distribution;
    readonly centralF: Distribution;
    readonly beta: Distribution;
    readonly binomial: { cdf(k: number, n: number, p: number): number };
    readonly poisson: { cdf(k: number, mean: number): number };
    readonly hypgeom: { cdf(k: number, lot: number, off: number, n: number): number };
    gammaln(x: number): number;
  }
  const library: { readonly jStat: Library };
  export default library;
}
